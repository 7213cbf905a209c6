import { z } from 'zod';
import { signatureSchema } from './signature.ts';

const id = z.string().min(1).max(64);
const shortText = z.string().max(200);
const reason = z.string().min(1).max(20_000);
const hex = (bytes: number) => z.string().regex(new RegExp(`^[0-9a-f]{${2 * bytes}}$`));

/** Bytes that scrypt takes are 128·N·r, and its time goes with p as well. */
const MOST_MEMORY = 2 ** 28;

/**
 * How a passphrase is kept: scrypt (RFC 7914) with its own salt, and the cost that it was hashed at, so that a later version
 * may ask for more. Bounded, so that no file can make a check endless or take all memory; N is a power of two (RFC 7914, 2).
 */
export const scryptSchema = z
  .strictObject({
    N: z.number().int().min(2).max(2 ** 20),
    r: z.number().int().min(1).max(32),
    p: z.number().int().min(1).max(16),
    salt: hex(16),
    hash: hex(32),
  })
  .refine(({ N, r }) => Number.isInteger(Math.log2(N)) && 128 * N * r <= MOST_MEMORY, 'scrypt takes a power of two for N, and at most 256 MB');

/** Entries about the people of the lab. */
export const personEntryBodies = {
  'person.changed': z.strictObject({
    personId: id,
    before: z.strictObject({ name: shortText, role: shortText }),
    name: shortText.min(1),
    role: shortText,
    reason,
  }),
  /** Takes the bench and signs no more; what they did keeps their name. */
  'person.retired': z.strictObject({ personId: id, reason }),
  'person.returned': z.strictObject({ personId: id, reason }),
  /** Takes the place of an earlier one. */
  'passphrase.set': z.strictObject({ personId: id, scrypt: scryptSchema }),
  /** A forgotten one is set anew, because a second person, who signs, lets it be. Earlier signatures stay what they are. */
  'passphrase.renewed': z.strictObject({ personId: id, scrypt: scryptSchema, reason, signature: signatureSchema }),
  /** A wrong passphrase. It is an entry so that the delay cannot be escaped by closing the notebook, and the lab sees who was tried. */
  'signing.refused': z.strictObject({ personId: id }),
} as const;

export type Scrypt = z.output<typeof scryptSchema>;
