import type { VerdictWord } from '../notebook/entry.ts';

const fromWorst: VerdictWord[] = ['falls short', 'undecided', 'meets'];

/** The verdict of a whole: its worst part decides; 'no limit' only where nothing was compared. */
export function worstVerdict(words: VerdictWord[]): VerdictWord {
  return fromWorst.find((word) => words.includes(word)) ?? 'no limit';
}
