/**
 * Whether the words of a press run name the roll of a sample: 'roll 1, 400 m' in 'roll 1, present ink R0'. What follows the
 * first comma of a roll says where on it; a bare number counts where 'roll' stands before it.
 */
export function rollInWords(roll: string, pressRun: string): boolean {
  const named = wordsOf(roll.split(/[,;(]/)[0] ?? '');
  if (named.length === 0) return false;
  const looked = named.length === 1 && /^\d+$/.test(named[0]!) ? ['roll', ...named] : named;
  const words = wordsOf(pressRun);
  return words.some((_, start) => looked.every((word, index) => words[start + index] === word));
}

function wordsOf(text: string): string[] {
  return text.toLowerCase().match(/[\p{L}\d]+/gu) ?? [];
}
