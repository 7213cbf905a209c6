import type { Entry } from './entry.ts';
import type { personEntryBodies } from './person-entries.ts';
import type { Signature } from './signature.ts';
import { put, remove, set } from './table-change.ts';
import type { ChangeOf, TableName } from './tables.ts';

/** An entry about a person. */
export type PersonEntry = Extract<Entry, { kind: keyof typeof personEntryBodies }>;

/** What such an entry does to the tables. */
export function personChanges(entry: PersonEntry): ChangeOf<TableName>[] {
  const { personId } = entry.body;
  switch (entry.kind) {
    case 'person.changed':
      return [set('person', { personId }, { name: entry.body.name, role: entry.body.role })];
    case 'person.retired':
      return [set('person', { personId }, { retired: 1, retiredReason: entry.body.reason })];
    case 'person.returned':
      return [set('person', { personId }, { retired: 0, retiredReason: '' })];
    case 'passphrase.set':
    case 'passphrase.renewed':
      return [put('passphrase', { personId, ...entry.body.scrypt, setAt: entry.occurredAt }), remove('signing_refused', { personId })];
    case 'signing.refused':
      return [put('signing_refused', { personId, lastAt: entry.occurredAt }, { times: 1 })];
  }
}

/** A signature ends the count of wrong passphrases. */
export function signedChanges({ body }: Entry): ChangeOf<TableName>[] {
  const { signature } = body as { signature?: Signature };
  return signature ? [remove('signing_refused', { personId: signature.personId })] : [];
}
