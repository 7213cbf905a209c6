interface Choice {
  value: string;
  label: string;
  shortcut: string;
}

/**
 * The choice that is meant by letters typed in one go: the first letter is its key or begins its label, further ones go on
 * in the label; a second letter that does not is a key again.
 * @param before the letters typed so far that meant something, '' where a new word begins
 * @param chosen the value that stands there; the same letter again goes on to the next label that begins with it
 * @returns the value, `null` where none is meant, and the letters to go on from
 */
export function choiceByLetters(choices: readonly Choice[], before: string, letter: string, chosen: string): { value: string | null; letters: string } {
  const letters = (before + letter).toLowerCase();
  const begins = (text: string) => choices.filter(({ label }) => label.toLowerCase().startsWith(text));
  if (letters.length > 1) {
    const matches = begins(letters);
    if (matches[0]) return { value: (matches.find(({ value }) => value === chosen) ?? matches[0]).value, letters };
    if (letters.length > 2) return { value: null, letters };
  }
  const one = letter.toLowerCase();
  const keyed = choices.find(({ shortcut }) => shortcut.toLowerCase() === one);
  if (keyed) return { value: keyed.value, letters: one };
  const labelled = begins(one);
  const next = labelled[(labelled.findIndex(({ value }) => value === chosen) + 1) % Math.max(1, labelled.length)];
  return next ? { value: next.value, letters: one } : { value: null, letters: before === '' ? '' : letters };
}
