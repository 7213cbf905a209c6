/** An entry in words: what was done, without who and when. */
export interface EntrySentence {
  text: string;
  /** For corrections: before, after and reason. */
  correction: { before: string; after: string; reason: string } | null;
}
