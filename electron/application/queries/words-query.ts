/**
 * For MATCH on `entry_words`: what was typed without a blank, as the full-text index cuts it up ('S-014' is s, then 014),
 * its last piece as the beginning of a word. '' when there is neither letter nor digit in it.
 */
export function wordsQuery(typed: string): string {
  const pieces = typed.normalize('NFC').match(/[\p{L}\p{M}\p{N}]+/gu) ?? [];
  return pieces.length === 0 ? '' : `"${pieces.join(' ')}*"`;
}
