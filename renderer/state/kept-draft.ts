import type { z } from 'zod';

/** An editor of which what is typed outlives a crash. No passphrase is ever part of it. */
export interface KeptDraft {
  /** By it a draft of another version of the program is told. */
  readonly shape: z.ZodType<object>;
  /** All that can be typed, as plain data; set when it is put back. */
  typed: object;
}
