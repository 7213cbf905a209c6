import { describe, expect, it } from 'vitest';
import { choiceByLetters } from '../../../renderer/state/choice-by-letters.ts';

const failure = [
  { value: 'adhesive', label: 'adhesive from film', shortcut: 'a' },
  { value: 'cohesive-adhesive', label: 'within the adhesive', shortcut: 'c' },
  { value: 'cohesive-ink', label: 'within the ink', shortcut: 's' },
  { value: 'film-tear', label: 'film tore', shortcut: 't' },
  { value: 'stretched', label: 'film stretched', shortcut: 'x' },
];
const side = [
  { value: 'outside', label: 'outside of the roll', shortcut: 'o' },
  { value: 'inside', label: 'inside of the roll', shortcut: 'i' },
  { value: 'unknown', label: 'not known', shortcut: 'n' },
];

/** What stands there after each letter. */
function typed(choices: typeof failure, text: string): string[] {
  let letters = '';
  let chosen = '';
  return [...text].map((letter) => {
    const meant = choiceByLetters(choices, letters, letter, chosen);
    letters = meant.letters;
    chosen = meant.value ?? chosen;
    return chosen;
  });
}

describe('letters typed in a choice', () => {
  it.each([
    ['a key', failure, 'a', 'adhesive'],
    ['a key that begins another label', side, 'n', 'unknown'],
    ['a word whose second letter is a key', side, 'in', 'inside'],
    ['a whole label with its spaces', side, 'inside of', 'inside'],
    ['one key after another, as one changes one’s mind', failure, 'act', 'film-tear'],
    ['keys that mean nothing before one that does', failure, 'q7t', 'film-tear'],
    ['a label that begins as another one', failure, 'film s', 'stretched'],
    ['a label that begins as another one, by its last word', failure, 'within the i', 'cohesive-ink'],
    ['the same letter twice', failure, 'ff', 'stretched'],
    ['a word that no label begins with, by its first letter alone', failure, 'tear', 'film-tear'],
  ])('%s', (_, choices, text, value) => {
    expect(typed(choices, text).at(-1)).toBe(value);
  });

  it('leave what stands there where they mean nothing', () => {
    expect(typed(side, 'zz')).toEqual(['', '']);
  });
});
