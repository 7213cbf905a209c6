import { describe, expect, it } from 'vitest';
import { runCalculation } from '../../../shared-lib/calculation/calculation.ts';
import { cureRubsCalculation } from '../../../shared-lib/cure/cure-rubs.calculation.ts';
import { cureRubsMethod } from '../../../shared-lib/cure/cure-rubs.method.ts';
import { bench, type Cells } from '../colour/bench.ts';
import { refusal } from '../surface-energy/refusal.ts';

const run = (specimens: object[], more: object = {}) => runCalculation(cureRubsCalculation, { specimens, ...more });
const sheet = (rows: Cells[], conditions: Cells = { solvent: 'ethanol' }, limits: Parameters<typeof bench>[2] = []) => bench(rows, conditions, limits);

describe('solvent double rubs', () => {
  it('counts, their geometric mean and the weakest', () => {
    const { results, notes } = run([{ doubleRubs: 25 }, { doubleRubs: 50 }, { doubleRubs: 100 }]);
    expect(results.doubleRubs!.value).toBeCloseTo(50, 9);
    expect(results.least!.value).toBe(25);
    expect(notes.at(-1)).toContain('It does not show conversion');
  });

  it('stopped whole: a lower bound', () => {
    const { results } = run([{ doubleRubs: 100, brokeThrough: false }, { doubleRubs: 100, brokeThrough: false }]);
    expect(results.doubleRubs).toMatchObject({ bound: 'at-least', unit: 'double rubs' });
    expect(results.median!.value).toBe(100);
  });

  it('the share that stands what is asked; the rub that breaks through is not stood', () => {
    const { results, flags } = run([{ doubleRubs: 50 }, { doubleRubs: 51 }, { doubleRubs: 50, brokeThrough: false }, { doubleRubs: 30, brokeThrough: false }], { requiredDoubleRubs: 50 });
    // Two stand it, one does not, one is open: from 2 of 4 to 3 of 4; Clopper–Pearson of 2 of 4 from 6.76 % (table).
    expect(results.shareStandingPct).toMatchObject({ bound: 'between', n: 4 });
    expect(results.shareStandingPct!.low).toBeCloseTo(6.76, 2);
    expect(flags.map(({ code, where }) => [code, where])).toEqual([['stopped-early', 'specimens[3].doubleRubs']]);
  });

  it.each([
    ['half a rub', [{ doubleRubs: 10.5 }], 'specimens[0].doubleRubs'],
    ['no rub', [{ doubleRubs: 0 }], 'specimens[0].doubleRubs'],
    ['no specimen', [], 'specimens'],
  ])('refuses %s', (_, specimens, field) => expect(refusal(() => run(specimens)).field).toBe(field));

  it('on the sheet asks whether it broke through, and takes what is asked for from the limit', () => {
    expect(refusal(() => cureRubsMethod.evaluate(sheet([{}, { doubleRubs: 40 }]))).field).toBe('rows[1].brokeThrough');
    expect(refusal(() => cureRubsMethod.evaluate(sheet([{}]))).field).toBe('rows[0].doubleRubs');
    const limit = { property: 'least', lower: 50, upper: null, source: 'customer' };
    const { results, flags } = cureRubsMethod.evaluate(sheet([{}, { doubleRubs: 40, brokeThrough: 'no' }], undefined, [limit]));
    expect(results.shareStandingPct!.bound).toBe('between');
    expect(flags[0]!.where).toBe('rows[1].doubleRubs');
  });
});
