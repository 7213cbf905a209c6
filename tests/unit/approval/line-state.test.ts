import fc from 'fast-check';
import { describe, expect, it, test } from 'vitest';
import { approvalStanding, standingWords } from '../../../shared-lib/approval/approval-standing.ts';
import { blockingSummary, checklistSummary } from '../../../shared-lib/approval/checklist-summary.ts';
import { lineStateText } from '../../../shared-lib/approval/line-state-text.ts';
import { rollInWords } from '../../../shared-lib/approval/roll-in-words.ts';
import { blockingStates, isBlocking, lineState, lineStates, type LineFilling, type LineState } from '../../../shared-lib/approval/line-state.ts';

const fillings: [LineFilling, LineState, boolean][] = [
  [{ by: 'nothing' }, 'open', true],
  [{ by: 'result', verdict: 'meets', current: true, enough: true }, 'meets', false],
  [{ by: 'result', verdict: 'no limit', current: true, enough: true }, 'tested', false],
  [{ by: 'result', verdict: 'falls short', current: true, enough: true }, 'falls short', true],
  [{ by: 'result', verdict: 'undecided', current: true, enough: true }, 'undecided', true],
  [{ by: 'result', verdict: 'meets', current: false, enough: true }, 'reopened', true],
  [{ by: 'result', verdict: 'meets', current: true, enough: false }, 'too few', true],
  [{ by: 'result', verdict: 'undecided', current: true, enough: false }, 'too few', true],
  [{ by: 'result', verdict: 'falls short', current: true, enough: false }, 'falls short', true],
  [{ by: 'result', verdict: 'meets', current: false, enough: false }, 'reopened', true],
  [{ by: 'observation', inOrder: true, measurable: false, overtaken: false }, 'in order', false],
  [{ by: 'observation', inOrder: false, measurable: false, overtaken: false }, 'not in order', true],
  [{ by: 'observation', inOrder: true, measurable: true, overtaken: false }, 'seen, not measured', false],
  [{ by: 'observation', inOrder: false, measurable: true, overtaken: false }, 'not in order', true],
  [{ by: 'observation', inOrder: true, measurable: true, overtaken: true }, 'open', true],
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
    expect(lineState({ by: 'result', verdict: 'undecided', current: true, enough: true }, 'undecided')).toBe('waived');
    expect(lineState({ by: 'result', verdict: 'undecided', current: false, enough: true }, 'undecided')).toBe('reopened');
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
  const draft = { signed: false, withdrawn: false, replaced: false, correctedLater: 0, retiredLater: 0, blocking: 0 };
  const signed = { ...draft, signed: true };
  expect(approvalStanding({ ...draft, blocking: 2 })).toBe('blocked');
  expect(approvalStanding(draft)).toBe('ready to sign');
  expect(approvalStanding(signed)).toBe('signed');
  expect(approvalStanding({ ...signed, correctedLater: 1 })).toBe('signed, corrected later');
  expect(approvalStanding({ ...signed, retiredLater: 1 })).toBe('signed, lot retired later');
  expect(approvalStanding({ ...signed, retiredLater: 1, correctedLater: 1 })).toBe('signed, corrected later');
  expect(approvalStanding({ ...signed, correctedLater: 1, replaced: true })).toBe('replaced');
  expect(approvalStanding({ ...signed, replaced: true, withdrawn: true })).toBe('withdrawn');
});

test('a signed approval does not hide in a list that lines were waived', () => {
  expect(standingWords('signed', 0)).toBe('signed');
  expect(standingWords('signed', 1)).toBe('signed, 1 line waived');
  expect(standingWords('signed, corrected later', 2)).toBe('signed, corrected later, 2 lines waived');
  expect(standingWords('blocked', 2)).toBe('blocked');
});

test('a line says all that blocks it', () => {
  expect(lineStateText({ state: 'too few', tooFew: '1 of 10 positions', result: { verdict: 'meets' } })).toBe('too few: 1 of 10 positions');
  expect(lineStateText({ state: 'too few', tooFew: '1 of 10 positions', result: { verdict: 'undecided' } })).toBe('too few: 1 of 10 positions, undecided');
  expect(lineStateText({ state: 'falls short', tooFew: '1 of 10 positions', result: { verdict: 'falls short' } })).toBe('falls short, too few: 1 of 10 positions');
  expect(lineStateText({ state: 'open', result: null })).toBe('open');
});

test.each([
  ['roll 1', 'roll 1, present ink R0', true],
  ['roll 1, 400 m', 'present ink R0 on Roll 1', true],
  ['roll 1', 'roll 12', false],
  ['roll 12', 'roll 1', false],
  ['roll 2', 'run 2, 2 March', false],
  ['2', 'run 2, 2 March', false],
  ['2', 'roll 2', true],
  ['sheet 12, R0 yellow', 'sheet 12', true],
  ['', 'roll 1', false],
  ['roll 1', '', false],
])('roll %j is named by the press run %j: %j', (roll, pressRun, named) => {
  expect(rollInWords(roll, pressRun)).toBe(named);
});
