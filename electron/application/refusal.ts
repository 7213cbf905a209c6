import type { CallProblem } from '../../shared-lib/api.ts';

/** What a use case throws when it cannot be done for another reason than its input. The message is for the reader at the bench. */
export class Refusal extends Error {
  override readonly name = 'Refusal';

  constructor(
    readonly code: Exclude<CallProblem['code'], 'input' | 'internal'>,
    message: string,
  ) {
    super(message);
  }
}
