/** An entry in words: what was done, without who and when. */
export interface EntrySentence {
  text: string;
  /** For corrections: before, after and reason. */
  correction: { before: string; after: string; reason: string } | null;
}

/** Ends like a sentence, also when the person who wrote it did not put a full stop. */
export function ended(text: string): string {
  return /[.!?…]$/.test(text) ? text : `${text}.`;
}

/** The end of a sentence about what was done: why, or only the full stop where nothing is said of that. */
export function because(reason: string): string {
  return reason === '' ? '.' : `: ${ended(reason)}`;
}
