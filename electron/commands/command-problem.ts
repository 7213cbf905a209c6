/** Thrown for whatever the person at the command line must mend; its message is a sentence for them. */
export class CommandProblem extends Error {
  /** @param field of the call's input that the application refused, or '' */
  constructor(
    message: string,
    readonly field = '',
  ) {
    super(message);
  }
}
