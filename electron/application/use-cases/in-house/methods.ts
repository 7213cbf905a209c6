import type { ParsedInput } from '../../../../shared-lib/api.ts';
import { InputError } from '../../../../shared-lib/calculation/input-error.ts';
import { checkWrittenMethod } from '../../../../shared-lib/method/in-house/check-written-method.ts';
import { differencesInWords } from '../../../../shared-lib/method/in-house/differences-in-words.ts';
import type { WrittenMethod } from '../../../../shared-lib/method/in-house/written-method.ts';
import type { InHouseView } from '../../../../shared-lib/notebook/in-house-views.ts';
import type { OpenNotebook } from '../../open-notebook.ts';
import { findAttachment } from '../../queries/attachments.ts';
import { findHabit, findInHouseMethod, type StoredMethod } from '../../queries/in-house-methods.ts';
import { Refusal } from '../../refusal.ts';
import { requireReason } from '../../require-reason.ts';
import type { Workplace } from '../../workplace.ts';
import { inHouseView } from './views.ts';

/** Writes a method down, as its first version; from a habit it takes over the habit's id. */
export function addInHouseMethod(workplace: Workplace, { written, methodId: habitId }: ParsedInput<'inHouseMethod.add'>): InHouseView {
  const { notebook } = workplace;
  const { store } = notebook;
  checkWrittenMethod(written);
  refuseTitleTaken(notebook, written, null);
  refuseMissingPictures(notebook, written);
  if (habitId !== undefined && !findHabit(store, habitId)) throw new Refusal('not-found', 'This habit is not in the notebook.');
  if (habitId !== undefined && findInHouseMethod(store, habitId)) throw new Refusal('conflict', 'This habit is written down already; make a new version of its method.');
  const methodId = habitId ?? workplace.newId();
  notebook.append([{ kind: 'inHouseMethod.added', body: { methodId, version: '1', written, origin: null } }]);
  return inHouseView(notebook, methodId);
}

/** Makes a version. Tests that run, and results that there are, keep the one they were made by. */
export function changeInHouseMethod({ notebook }: Workplace, { methodId, written, reason }: ParsedInput<'inHouseMethod.change'>): InHouseView {
  const { retired } = requireMethod(notebook, methodId);
  checkWrittenMethod(written);
  refuseTitleTaken(notebook, written, methodId);
  refuseMissingPictures(notebook, written);
  const changes = differencesInWords(notebook.methods.inHouse(methodId)!.written, written);
  if (changes.length === 0 && !retired) throw new InputError('written', null, 'Nothing is different from the version that there is.');
  requireReason(reason, 'The method was written down before');
  notebook.append([{ kind: 'inHouseMethod.versioned', body: { methodId, version: nextVersion(notebook, methodId), written, origin: null, changes, reason: reason.trim() } }]);
  return inHouseView(notebook, methodId);
}

/** No new test is started by it. */
export function retireInHouseMethod({ notebook }: Workplace, { methodId, reason }: ParsedInput<'inHouseMethod.retire'>): InHouseView {
  const { title, retired } = requireMethod(notebook, methodId);
  if (retired) throw new Refusal('conflict', `${title} is retired already.`);
  requireReason(reason, 'A retired method is no longer offered');
  notebook.append([{ kind: 'inHouseMethod.retired', body: { methodId, reason: reason.trim() } }]);
  return inHouseView(notebook, methodId);
}

/** @throws Refusal when there is no such method */
export function requireMethod({ store }: OpenNotebook, methodId: string): StoredMethod {
  const method = findInHouseMethod(store, methodId);
  if (!method) throw new Refusal('not-found', 'This method is not in the notebook.');
  return method;
}

export function nextVersion({ store }: OpenNotebook, methodId: string): string {
  const { last } = store.one<{ last: number }>('SELECT max(CAST(version AS INTEGER)) AS last FROM in_house_version WHERE methodId = ?', [methodId])!;
  return String(last + 1);
}

function refuseMissingPictures({ store }: OpenNotebook, { readings }: WrittenMethod): void {
  for (const reading of readings) {
    for (const { grade, pictureSha256 } of reading.kind === 'grade' ? reading.grades : []) {
      if (pictureSha256 && !findAttachment(store, pictureSha256)?.mediaType.startsWith('image/')) throw new InputError('written.readings', pictureSha256, `The picture of grade ${grade} is not in the notebook; put it with the method first.`);
    }
  }
}

function refuseTitleTaken(notebook: OpenNotebook, { title }: WrittenMethod, methodId: string | null): void {
  const same = titleInUse(notebook, title, methodId);
  if (same !== null) throw new InputError('written.title', title, `There is already a method ‘${same}’; give this one a title of its own.`);
}

/** The title of another method in use that reads the same, or `null`: two of one title could not be told apart in lists. */
export function titleInUse({ methods }: OpenNotebook, title: string, methodId: string | null): string | null {
  return methods.current().find((method) => method.id !== methodId && method.title.toLowerCase() === title.toLowerCase())?.title ?? null;
}
