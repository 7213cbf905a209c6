import { isBlocking, lineStates, type LineState } from './line-state.ts';

/** A line as far as its sum is concerned. */
export interface SummedLine {
  state: LineState;
  /** Who waived it; '' unless it is waived. */
  waivedBy: string;
}

const words: Record<LineState, (count: number) => string> = {
  open: (count) => `${count} ${count === 1 ? 'is' : 'are'} open`,
  reopened: (count) => `${count} ${count === 1 ? 'is' : 'are'} open again after a correction`,
  'falls short': (count) => `${count} ${count === 1 ? 'falls' : 'fall'} short`,
  'too few': (count) => `${count} ${count === 1 ? 'has' : 'have'} too few readings`,
  undecided: (count) => `${count} ${count === 1 ? 'is' : 'are'} undecided`,
  'not in order': (count) => `${count} ${count === 1 ? 'was' : 'were'} seen not to be in order`,
  meets: (count) => `${count} ${count === 1 ? 'meets its limits' : 'meet their limits'}`,
  tested: (count) => `${count} ${count === 1 ? 'is' : 'are'} tested without a limit`,
  'in order': (count) => `${count} ${count === 1 ? 'was' : 'were'} seen to be in order`,
  'seen, not measured': (count) => `${count} ${count === 1 ? 'was' : 'were'} seen, not measured`,
  waived: (count) => `${count} ${count === 1 ? 'is' : 'are'} waived`,
};

/** A checklist in one sentence without its full stop: '6 lines: 4 meet their limits, 1 was seen to be in order, 1 is waived (by Abena Quist)'. */
export function checklistSummary(lines: readonly SummedLine[]): string {
  const waivers = [...new Set(lines.filter(({ state }) => state === 'waived').map(({ waivedBy }) => waivedBy))];
  const parts = lineStates.flatMap((state) => {
    const count = lines.filter((line) => line.state === state).length;
    if (count === 0) return [];
    return [state === 'waived' ? `${words.waived(count)} (by ${listed(waivers)})` : words[state](count)];
  });
  return `${lines.length} ${lines.length === 1 ? 'line' : 'lines'}: ${parts.join(', ')}`;
}

/** What still keeps it from being signed: '2 are open, 1 is undecided'; '' when nothing does. */
export function blockingSummary(states: readonly LineState[]): string {
  return lineStates
    .filter(isBlocking)
    .flatMap((state) => {
      const count = states.filter((other) => other === state).length;
      return count === 0 ? [] : [words[state](count)];
    })
    .join(', ');
}

function listed(names: readonly string[]): string {
  return names.length < 2 ? names.join('') : `${names.slice(0, -1).join(', ')} and ${names.at(-1)}`;
}
