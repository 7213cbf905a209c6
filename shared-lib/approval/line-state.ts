import type { VerdictWord } from '../method/property-verdict.ts';

/** What fills a line of an approval's checklist. */
export type LineFilling =
  | { by: 'nothing' }
  /** `current`: the linked test still stands as it was finished when it was linked. `enough`: it has the rows that the plan asks for. */
  | { by: 'result'; verdict: VerdictWord; current: boolean; enough: boolean }
  /** `measurable`: the plan sets a limit. `overtaken`: there is a result by now, which alone decides such a line. */
  | { by: 'observation'; inOrder: boolean; measurable: boolean; overtaken: boolean };

/**
 * How a line stands. `reopened`: its linked result was corrected since. `tested`: a result, and no limit to compare it with.
 * `too few`: finished with fewer complete rows than the plan asks for. `in order`, `not in order`: what a person saw and signed;
 * where the plan sets a limit, `seen, not measured` stands for the first.
 */
export const lineStates = ['open', 'reopened', 'falls short', 'too few', 'undecided', 'not in order', 'meets', 'tested', 'in order', 'seen, not measured', 'waived'] as const;

export type LineState = (typeof lineStates)[number];

/** Those that keep an approval from being signed, and that a named person may waive. */
export const blockingStates = ['open', 'reopened', 'falls short', 'too few', 'undecided', 'not in order'] as const satisfies readonly LineState[];

export type BlockingState = (typeof blockingStates)[number];

/**
 * The state of a line.
 * @param waived the state that a person waived, if any: the waiver holds for as long as that is how the line stands
 */
export function lineState(filling: LineFilling, waived: BlockingState | null): LineState {
  const state = stateOf(filling);
  return waived !== null && waived === state ? 'waived' : state;
}

export function isBlocking(state: LineState): state is BlockingState {
  return (blockingStates as readonly LineState[]).includes(state);
}

function stateOf(filling: LineFilling): LineState {
  switch (filling.by) {
    case 'nothing':
      return 'open';
    case 'observation':
      if (filling.overtaken) return 'open';
      if (!filling.inOrder) return 'not in order';
      return filling.measurable ? 'seen, not measured' : 'in order';
    case 'result':
      if (!filling.current) return 'reopened';
      // More rows cannot take back that one fell short.
      if (!filling.enough && filling.verdict !== 'falls short') return 'too few';
      return filling.verdict === 'no limit' ? 'tested' : filling.verdict;
  }
}
