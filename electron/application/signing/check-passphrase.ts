import { InputError } from '../../../shared-lib/calculation/input-error.ts';
import type { OpenNotebook } from '../open-notebook.ts';
import { findPerson, findPassphrase, refusedPassphrases } from '../queries/people.ts';
import { Refusal } from '../refusal.ts';
import { secondsToWait, waitInWords } from './refused-delay.ts';
import { matchesHash } from './passphrase-hash.ts';

/**
 * Checks a person's passphrase. A wrong one is counted in the record; after the fifth one has to wait, ever longer, also
 * when the notebook was closed meanwhile.
 * @param field of the call, for the sentence to stand beside; it never carries what was typed
 * @throws InputError on `field` when it is wrong, missing or too early; Refusal when nothing can be recorded or there is no such person
 */
export async function checkPassphrase(notebook: OpenNotebook, personId: string, passphrase: string, field = 'passphrase'): Promise<void> {
  const { store } = notebook;
  if (store.readOnly) throw new Refusal('read-only', store.readOnly);
  const person = findPerson(store, personId);
  if (!person) throw new Refusal('not-found', 'This person is not in the notebook.');
  const kept = findPassphrase(store, personId);
  const refuse = (sentence: string) => new InputError(field, null, sentence);
  if (!kept) throw refuse(`${person.name} has no passphrase yet; it is set under Notebook, People.`);
  if (passphrase === '') throw refuse(`Type the passphrase of ${person.name}.`);
  const before = waiting(notebook, personId);
  if (before > 0) throw refuse(`Too many wrong passphrases for ${person.name}: wait ${waitInWords(before)}, then type it again.`);
  if (await matchesHash(passphrase, kept)) return;
  notebook.append([{ kind: 'signing.refused', body: { personId } }]);
  const now = waiting(notebook, personId);
  throw refuse(`This is not the passphrase of ${person.name}.${now > 0 ? ` Wait ${waitInWords(now)} before typing it again.` : ''}`);
}

function waiting(notebook: OpenNotebook, personId: string): number {
  const refused = refusedPassphrases(notebook.store, personId);
  return refused ? secondsToWait(refused.times, (Date.parse(notebook.now()) - Date.parse(refused.lastAt)) / 1000) : 0;
}
