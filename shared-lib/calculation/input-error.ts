/** What was wrong with one input: which field, the value found there, and what is allowed. */
export interface InputProblem {
  /** Path of the field as the caller wrote it, e.g. `positions[2].wetsMNm`. */
  field: string;
  value: unknown;
  /** One sentence for the reader at the bench: what is wrong and what is allowed. */
  message: string;
}

/** Thrown by a calculation, a parser or a use case when input cannot be used. Never carries a stack to the screen. */
export class InputError extends Error implements InputProblem {
  override readonly name = 'InputError';

  constructor(
    readonly field: string,
    readonly value: unknown,
    message: string,
  ) {
    super(message);
  }

  toProblem(): InputProblem {
    return { field: this.field, value: this.value ?? null, message: this.message };
  }
}
