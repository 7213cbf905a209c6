import { InputError } from '../../../shared-lib/calculation/input-error.ts';
import type { Person } from '../../../shared-lib/notebook/views.ts';
import { normalPassphrase } from './passphrase-hash.ts';

/** Characters, spaces around and repeated ones left out. NIST SP 800-63B, 5.1.1.2, asks for at least 8 and that 64 can be typed. */
const SHORTEST = 8;
const LONGEST = 200;
/** UTF-16 units: no passphrase of `LONGEST` characters is longer, however its letters are put together. */
export const MOST_TYPED = 10 * LONGEST;
/** With fewer, the rest is repetition. */
const FEWEST_DIFFERENT = 3;

/**
 * Whether a new passphrase may be taken; it is looked at as it is hashed.
 * @throws InputError on `passphrase`, whose sentence does not repeat it
 */
export function requireAcceptable(passphrase: string, { name, initials }: Person): void {
  const refuse = (sentence: string) => new InputError('passphrase', null, sentence);
  const tooLong = refuse(`A passphrase has at most ${LONGEST} characters.`);
  if (passphrase.length > MOST_TYPED) throw tooLong;
  const normal = normalPassphrase(passphrase);
  const words = normal.trim().replace(/\s+/g, ' ');
  if ([...words].length < SHORTEST) throw refuse(`A passphrase has at least ${SHORTEST} characters; a few words in a row are easy to keep and hard to guess.`);
  if ([...normal].length > LONGEST) throw tooLong;
  const plain = inPlain(words);
  if (new Set(plain).size < FEWEST_DIFFERENT || [name, initials].some((known) => plain === inPlain(known.normalize('NFKC')))) throw refuse('This would be guessed at once; take a few words in a row.');
}

function inPlain(text: string): string {
  return text.toLowerCase().replace(/\s/g, '');
}
