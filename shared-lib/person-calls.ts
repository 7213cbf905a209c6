import { z } from 'zod';
import { call } from './api-call.ts';
import type { Person } from './notebook/views.ts';

const id = z.string().min(1).max(64);
const line = z.string().trim().max(200);
const text = z.string().max(20_000);
/** Only text: what the schema refused would be told with its value. The application says what it must be. */
const passphrase = z.string();

/** Who signs, with what they typed. A call that signs spreads these; the passphrase goes no further than the check. */
export const signing = { personId: id, passphrase };

/** The calls about the people of the lab. */
export const personCalls = {
  'person.add': call<Person>()(z.strictObject({ name: line.min(1), initials: z.string().trim().min(1).max(5), role: line })),
  'person.change': call<Person>()(z.strictObject({ personId: id, name: line.min(1), role: line, reason: text })),
  'person.retire': call<Person>()(z.strictObject({ personId: id, reason: text })),
  'person.return': call<Person>()(z.strictObject({ personId: id, reason: text })),
  /** `oldPassphrase`: needed where the person has one. */
  'passphrase.set': call<Person>()(z.strictObject({ personId: id, passphrase, oldPassphrase: passphrase.default('') })),
  /** A forgotten one: the second person, who signs with their own passphrase, lets it be set anew. */
  'passphrase.renew': call<Person>()(z.strictObject({ personId: id, passphrase, reason: text, secondPersonId: z.string().max(64), secondPassphrase: passphrase })),
} as const;
