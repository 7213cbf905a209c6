import type { Scrypt } from '../../../shared-lib/notebook/person-entries.ts';
import type { Person } from '../../../shared-lib/notebook/views.ts';
import type { NotebookStore } from '../../store/notebook-store.ts';
import { Refusal } from '../refusal.ts';

const PERSON = `SELECT personId, name, initials, role, retired, retiredReason, passphrase.hash IS NOT NULL AS hasPassphrase
                FROM person LEFT JOIN passphrase USING (personId)`;

type StoredPerson = Omit<Person, 'retired' | 'hasPassphrase'> & { retired: 0 | 1; hasPassphrase: 0 | 1 };

/** In the order in which they were added; those who left as well, for what they did carries their name. */
export function listPeople(store: NotebookStore): Person[] {
  return store.all<StoredPerson>(`${PERSON} ORDER BY addedSeq`).map(personOf);
}

export function findPerson(store: NotebookStore, personId: string): Person | undefined {
  const found = store.one<StoredPerson>(`${PERSON} WHERE personId = ?`, [personId]);
  return found && personOf(found);
}

/** Name and role that a person had when entry `seq` was made: what the next change of them says that stood before. */
export function personAt(store: NotebookStore, personId: string, seq: number): Pick<Person, 'name' | 'role'> | undefined {
  const changed = store.one<{ before: string }>(
    `SELECT json_extract(body, '$.before') AS before FROM entry WHERE kind = 'person.changed' AND seq > ? AND json_extract(body, '$.personId') = ? ORDER BY seq LIMIT 1`,
    [seq, personId],
  );
  return changed ? (JSON.parse(changed.before) as Pick<Person, 'name' | 'role'>) : findPerson(store, personId);
}

/** @throws Refusal when the notebook has no such person, or they left */
export function requireActive(store: NotebookStore, personId: string): Person {
  const person = findPerson(store, personId);
  if (!person) throw new Refusal('not-found', 'This person is not in the notebook.');
  if (person.retired) throw new Refusal('conflict', `${person.name} is retired (${person.retiredReason}) and neither takes the bench nor signs.`);
  return person;
}

/** The person's name, or the id where the notebook has no such person. */
export function nameOf(store: NotebookStore, personId: string): string {
  return findPerson(store, personId)?.name ?? personId;
}

export function findPassphrase(store: NotebookStore, personId: string): Scrypt | undefined {
  return store.one<Scrypt>('SELECT N, r, p, salt, hash FROM passphrase WHERE personId = ?', [personId]);
}

/** Wrong passphrases since the last right one. */
export function refusedPassphrases(store: NotebookStore, personId: string): { times: number; lastAt: string } | undefined {
  return store.one<{ times: number; lastAt: string }>('SELECT times, lastAt FROM signing_refused WHERE personId = ?', [personId]);
}

function personOf({ retired, hasPassphrase, ...person }: StoredPerson): Person {
  return { ...person, retired: retired === 1, hasPassphrase: hasPassphrase === 1 };
}
