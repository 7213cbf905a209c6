import type { EntryNames } from './entry-names.ts';
import { ended, type EntrySentence } from './sentence.ts';
import type { PersonEntry } from './person-changes.ts';

/** An entry about a person in one sentence. */
export function personSentence(entry: PersonEntry, names: EntryNames): EntrySentence {
  const name = names.person(entry.body.personId);
  switch (entry.kind) {
    case 'person.changed': {
      const { before, reason } = entry.body;
      const correction = { before: named(before), after: named(entry.body), reason };
      return { text: `Changed ${correction.before} to ${correction.after}.`, correction };
    }
    case 'person.retired':
      return { text: `Retired ${name}: ${ended(entry.body.reason)}`, correction: null };
    case 'person.returned':
      return { text: `Brought ${name} back: ${ended(entry.body.reason)}`, correction: null };
    case 'passphrase.set':
      return { text: `Set a passphrase for ${name}.`, correction: null };
    case 'passphrase.renewed':
      return { text: `${names.person(entry.body.signature.personId)} let the forgotten passphrase of ${name} be set anew: ${ended(entry.body.reason)}`, correction: null };
    case 'signing.refused':
      return { text: `Refused a wrong passphrase for ${name}.`, correction: null };
  }
}

function named({ name, role }: { name: string; role: string }): string {
  return role ? `${name}, ${role}` : name;
}
