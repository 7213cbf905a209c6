import type { LineState } from './line-state.ts';

/** A line as far as its state in words is concerned. */
interface StatedLine {
  state: LineState;
  /** '1 of 10 positions', or '' where its result has enough. */
  tooFew?: string;
  result: { verdict?: string } | null;
}

/** The state of a line with all that blocks it: 'too few: 1 of 10 positions, undecided'. */
export function lineStateText({ state, tooFew = '', result }: StatedLine): string {
  if (state === 'too few') return [`too few: ${tooFew}`, ...(result?.verdict === 'undecided' ? ['undecided'] : [])].join(', ');
  return state === 'falls short' && tooFew ? `falls short, too few: ${tooFew}` : state;
}
