/** Thrown for whatever the person at the command line must mend; its message is a sentence for them. */
export class CommandProblem extends Error {}
