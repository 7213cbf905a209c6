import fc from 'fast-check';
import { describe, expect, it, test } from 'vitest';
import { approvalStanding } from '../../../shared-lib/approval/approval-standing.ts';
import { blockingSummary, checklistSummary } from '../../../shared-lib/approval/checklist-summary.ts';
import { blockingStates, isBlocking, lineState, lineStates, type LineFilling, type LineState } from '../../../shared-lib/approval/line-state.ts';

const fillings: [LineFilling, LineState, boolean][] = [
  [{ by: 'nothing' }, 'open', true],
  [{ by: 'result', verdict: 'meets', current: true }, 'meets', false],
  [{ by: 'result', verdict: 'no limit', current: true }, 'tested', false],
  [{ by: 'result', verdict: 'falls short', current: true }, 'falls short', true],
  [{ by: 'result', verdict: 'undecided', current: true }, 'undecided', true],
  [{ by: 'result', verdict: 'meets', current: false }, 'reopened', true],
  [{ by: 'observation', inOrder: true }, 'in order', false],
  [{ by: 'observation', inOrder: false }, 'not in order', true],
];

describe('a line of a checklist', () => {
  test.each(fillings)('%j is %s', (filling, state, blocks) => {
    expect(lineState(filling, null)).toBe(state);
    expect(isBlocking(state)).toBe(blocks);
  });

  it('is waived only while it stands as it did when it was waived', () => {
    fc.assert(
      fc.property(fc.constantFrom(...fillings), fc.constantFrom(...blockingStates), ([filling, state], waived) => {
        expect(lineState(filling, waived)).toBe(waived === state ? 'waived' : state);
      }),
    );
  });

  it('once waived as undecided, blocks again when its result is corrected', () => {
    expect(lineState({ by: 'result', verdict: 'undecided', current: true }, 'undecided')).toBe('waived');
    expect(lineState({ by: 'result', verdict: 'undecided', current: false }, 'undecided')).toBe('reopened');
  });
});

describe('the sum of a checklist', () => {
  const lines = (...states: LineState[]) => states.map((state) => ({ state, waivedBy: state === 'waived' ? 'Abena Quist' : '' }));

  it('says how many lines stand how, and who waived', () => {
    expect(checklistSummary(lines('meets', 'meets', 'in order', 'waived'))).toBe('4 lines: 2 meet their limits, 1 was seen to be in order, 1 is waived (by Abena Quist)');
    expect(checklistSummary([{ state: 'meets', waivedBy: '' }])).toBe('1 line: 1 meets its limits');
    expect(checklistSummary([...lines('waived'), { state: 'waived', waivedBy: 'Teodor Vance' }])).toBe('2 lines: 2 are waived (by Abena Quist and Teodor Vance)');
  });

  it('says what blocks, and nothing else', () => {
    expect(blockingSummary(['meets', 'open', 'undecided', 'open', 'reopened', 'not in order', 'falls short'])).toBe(
      '2 are open, 1 is open again after a correction, 1 falls short, 1 is undecided, 1 was seen not to be in order',
    );
    expect(blockingSummary(['meets', 'tested', 'in order', 'waived'])).toBe('');
  });

  it('counts every line once, whatever their states', () => {
    fc.assert(
      fc.property(fc.array(fc.constantFrom(...lineStates), { minLength: 1, maxLength: 40 }), (states) => {
        const counts = [...checklistSummary(lines(...states)).matchAll(/(?:: |, )(\d+) /g)].map(([, count]) => Number(count));
        expect(counts.reduce((sum, count) => sum + count, 0)).toBe(states.length);
        expect(blockingSummary(states) === '').toBe(!states.some(isBlocking));
      }),
    );
  });
});

test('an approval is signed only as long as nothing took it back', () => {
  const draft = { signed: false, withdrawn: false, replaced: false, correctedLater: 0, blocking: 0 };
  const signed = { ...draft, signed: true };
  expect(approvalStanding({ ...draft, blocking: 2 })).toBe('blocked');
  expect(approvalStanding(draft)).toBe('ready to sign');
  expect(approvalStanding(signed)).toBe('signed');
  expect(approvalStanding({ ...signed, correctedLater: 1 })).toBe('signed, corrected later');
  expect(approvalStanding({ ...signed, correctedLater: 1, replaced: true })).toBe('replaced');
  expect(approvalStanding({ ...signed, replaced: true, withdrawn: true })).toBe('withdrawn');
});
