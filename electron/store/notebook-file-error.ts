/** What stands in the way of a notebook file. */
export type NotebookFault =
  | 'missing'
  | 'exists'
  | 'not-a-notebook'
  | 'damaged'
  | 'newer'
  | 'no-permission'
  | 'disk-full'
  | 'changed-outside'
  | 'read-only'
  | 'busy'
  | 'io';

/** Thrown by the store. The message is one or two sentences for the reader at the bench. */
export class NotebookFileError extends Error {
  override readonly name = 'NotebookFileError';

  constructor(
    readonly code: NotebookFault,
    message: string,
    options?: ErrorOptions,
  ) {
    super(message, options);
  }
}

const faults: Record<string, [NotebookFault, string]> = {
  ENOENT: ['missing', 'it or its folder is not there'],
  EACCES: ['no-permission', 'you do not have the permission'],
  EPERM: ['no-permission', 'the system does not permit it'],
  EROFS: ['no-permission', 'the disk is read-only'],
  ENOSPC: ['disk-full', 'the disk is full'],
  EDQUOT: ['disk-full', 'your share of the disk is used up'],
  EFBIG: ['disk-full', 'the disk takes no file of this size'],
  EBUSY: ['busy', 'another program (a virus scanner, a backup, a sync service?) is holding it'],
  EISDIR: ['not-a-notebook', 'it is a folder'],
  ENOTDIR: ['missing', 'a part of its path is not a folder'],
  EEXIST: ['exists', 'something else of that name stands there'],
};

/**
 * Puts a system error into words: "`doing` failed: the disk is full."
 * @param doing What was tried, with the file's name, e.g. 'Writing lab.laydown'.
 */
export function fileError(doing: string, error: unknown): NotebookFileError {
  if (error instanceof NotebookFileError) return error;
  const [fault, why] = faultOf(error);
  return new NotebookFileError(fault, `${doing} failed: ${why}.`, { cause: error });
}

/** Why something failed, as the second half of a sentence: 'the disk is full'. */
export function reasonOf(error: unknown): string {
  return faultOf(error)[1];
}

function faultOf(error: unknown): [NotebookFault, string] {
  const code = systemCode(error);
  return faults[code] ?? ['io', `the system says ${code || String(error)}`];
}

/** Whether the operating system refused something, so that `reasonOf` can say why. */
export function isSystemError(error: unknown): error is NodeJS.ErrnoException {
  return systemCode(error) !== '' && 'syscall' in (error as Error);
}

/** The errno name of a system error, or ''. */
export function systemCode(error: unknown): string {
  return error instanceof Error && 'code' in error && typeof error.code === 'string' ? error.code : '';
}
