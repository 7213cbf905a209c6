import { z } from 'zod';

/**
 * That a person stood up for something, having typed their own passphrase. It stands in the body of the entry that it signs,
 * as `signature`, and is sealed with it; `electron/application/signing/sign.ts` makes it.
 */
export const signatureSchema = z.strictObject({
  /** Who signs; it need not be the person at the bench. */
  personId: z.string().min(1).max(64),
  /** What the signature says, as a verb with its object: 'approves the press run', 'has read and understood …'. */
  meaning: z.string().min(1).max(2000),
  at: z.iso.datetime(),
});

export type Signature = z.output<typeof signatureSchema>;
