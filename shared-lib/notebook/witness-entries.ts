import { z } from 'zod';
import { signatureSchema } from './signature.ts';

const id = z.string().min(1).max(64);
const seq = z.number().int().positive();

/** Entries about work that was read by a second person, or was begun by mistake. */
export const witnessEntryBodies = {
  /**
   * A second person has read a page of work: the entries `fromSeq` to `toSeq`, of them only those about the test where one
   * is named, and only those by one person where one is named.
   */
  'work.witnessed': z.strictObject({
    testId: id.nullable(),
    by: id.nullable(),
    fromSeq: seq,
    toSeq: seq,
    /** Hash of entry `toSeq`, which seals all before it as well. */
    chainHash: z.string().length(64),
    signature: signatureSchema,
  }),
  /** A test that was begun by mistake and has no readings: it stays in the record and counts nowhere. */
  'test.withdrawn': z.strictObject({ testId: id, reason: z.string().min(1).max(20_000) }),
} as const;
