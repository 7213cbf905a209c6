import { InputError } from '../../../shared-lib/calculation/input-error.ts';
import type { OpenNotebook } from '../open-notebook.ts';
import { findPerson, findPassphrase, refusedPassphrases } from '../queries/people.ts';
import { Refusal } from '../refusal.ts';
import { MOST_TYPED } from './acceptable-passphrase.ts';
import { matchesHash } from './passphrase-hash.ts';
import { waitInWords } from '../../../shared-lib/quantity/wait-in-words.ts';
import { secondsToWait } from './refused-delay.ts';
import { TooEarly } from './too-early.ts';

/**
 * Checks a person's passphrase. A wrong one is counted in the record; after the fifth one has to wait, ever longer, also
 * when the notebook was closed meanwhile.
 * @param field of the call, for the sentence to stand beside; it never carries what was typed
 * @throws InputError on `field` when it is wrong, missing or too early; Refusal when nothing can be recorded or there is no such person
 */
export async function checkPassphrase(notebook: OpenNotebook, personId: string, passphrase: string, field = 'passphrase'): Promise<void> {
  const { store } = notebook;
  // A wrong one that could not be recorded would be a guess that costs nothing.
  notebook.requireHand();
  const person = findPerson(store, personId);
  if (!person) throw new Refusal('not-found', 'This person is not in the notebook.');
  const kept = findPassphrase(store, personId);
  const refuse = (sentence: string) => new InputError(field, null, sentence);
  if (!kept) throw refuse(`${person.name} has no passphrase yet; it is set under Notebook, People.`);
  if (passphrase === '') throw refuse(`Type the passphrase of ${person.name}.`);
  if (passphrase.length > MOST_TYPED) throw refuse('No passphrase is as long as what was typed; type it again.');
  const before = waiting(notebook, personId);
  if (before > 0) throw new TooEarly(field, `Too many wrong passphrases for ${person.name}: wait ${waitInWords(before)}, then type it again.`, before);
  if (await matchesHash(passphrase, kept)) return;
  notebook.append([{ kind: 'signing.refused', body: { personId } }]);
  const now = waiting(notebook, personId);
  const sentence = `This is not the passphrase of ${person.name}.`;
  throw now > 0 ? new TooEarly(field, `${sentence} Wait ${waitInWords(now)} before typing it again.`, now) : refuse(sentence);
}

/**
 * Seconds. A clock that was set back makes the wait no shorter, and no longer than that of one wrong passphrase: it begins
 * anew when it is seen that the last one lies ahead.
 */
function waiting({ store, now, refusedAhead }: OpenNotebook, personId: string): number {
  const refused = refusedPassphrases(store, personId);
  if (!refused) return 0;
  const at = Date.parse(now());
  let since = Date.parse(refused.lastAt);
  if (since > at) {
    const known = refusedAhead.get(personId);
    const seenAt = known?.lastAt === refused.lastAt && known.seenAt <= at ? known.seenAt : at;
    refusedAhead.set(personId, { lastAt: refused.lastAt, seenAt });
    since = seenAt;
  }
  return secondsToWait(refused.times, (at - since) / 1000);
}
