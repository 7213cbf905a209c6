import { describe, expect, it } from 'vitest';
import { runCalculation } from '../../../shared-lib/calculation/calculation.ts';
import { InputError } from '../../../shared-lib/calculation/input-error.ts';
import type { CellValue } from '../../../shared-lib/method/method.ts';
import { residualSolventCalculation } from '../../../shared-lib/release/residual-solvent.calculation.ts';
import { residualSolventMethod } from '../../../shared-lib/release/residual-solvent.method.ts';
import { benchOf } from './bench.ts';

const run = (input: unknown) => runCalculation(residualSolventCalculation, input);
const codes = (input: unknown) => run(input).flags.map(({ code }) => code);

const amounts = [0, 2, 4, 6, 8, 10, 12];
const calibration = amounts.map((amount, i) => ({ amount, area: [2.1, 5.0, 9.0, 12.6, 17.3, 21.0, 24.7][i]! }));
const solvent = (name: string, areas: number[], extra = {}) => ({ name, calibration, specimens: areas.map((area) => ({ areas: [area], areaM2: 0.01 })), ...extra });

describe('one solvent', () => {
  it('scales with the unit of the standards and the area of the specimen', () => {
    const value = (amountUnit: string, areaM2: number) => run({ calibration, specimens: [{ areas: [13.5], areaM2 }], amountUnit }).results.perSquareMetre!.value!;
    expect(value('µg', 0.01)).toBeCloseTo(0.6207, 4);
    expect(value('ug', 0.01)).toBe(value('µg', 0.01));
    expect(value('mg', 0.01)).toBeCloseTo(1000 * value('µg', 0.01), 8);
    expect(value('ng', 0.01)).toBeCloseTo(value('µg', 0.01) / 1000, 12);
    expect(value('µg', 0.02)).toBeCloseTo(value('µg', 0.01) / 2, 12);
  });

  it('narrows with replicate injections', () => {
    const width = (areas: number[]) => {
      const { low, high } = run({ calibration, specimens: [{ areas, areaM2: 0.01 }] }).results.perSquareMetre!;
      return high! - low!;
    };
    expect(width([13.5, 13.5, 13.5, 13.5])).toBeLessThan(0.75 * width([13.5]));
  });

  it('has the scatter between specimens and that of the line in the interval of their mean', () => {
    const { value, low, high, n } = run({ calibration, specimens: [12.5, 13.5, 14.5].map((area) => ({ areas: [area], areaM2: 0.01 })) }).results.perSquareMetre!;
    // Specimens alone: t(0.975, 2)·(1/1.9304/10)/√3 = 4.3027 · 0.051803 / 1.73205 = 0.12869 mg/m².
    expect(n).toBe(3);
    expect(value!).toBeCloseTo(0.6207, 4);
    expect((high! - low!) / 2).toBeGreaterThan(0.1);
    expect((high! - low!) / 2).toBeLessThan(0.14);
  });

  it('is a bracket where only some specimens hold the solvent', () => {
    const { value, low, high, bound } = run({ calibration, specimens: [{ areas: [13.5], areaM2: 0.01 }, { areas: [1.6], areaM2: 0.01 }] }).results.perSquareMetre!;
    expect(bound).toBe('between');
    expect(low!).toBeCloseTo(0.6207 / 2, 4);
    expect(high!).toBeCloseTo((0.6207 + 0.07399) / 2, 4);
    expect(value!).toBeCloseTo((low! + high!) / 2, 12);
  });

  it.each([
    ['beyond the largest standard', { calibration, specimens: [{ areas: [30], areaM2: 0.01 }] }, 'outside-calibration'],
    ['between detection and quantification', { calibration, specimens: [{ areas: [4], areaM2: 0.01 }] }, 'below-quantification'],
    ['below the least standard', { calibration, specimens: [{ areas: [4], areaM2: 0.01 }] }, 'below-lowest-standard'],
    ['two standards', { calibration: [{ amount: 0, area: 1 }, { amount: 10, area: 21 }], specimens: [{ areas: [11], areaM2: 0.01 }] }, 'two-point-calibration'],
    ['an area that falls', { calibration: [...calibration.slice(0, 6), { amount: 12, area: 20.5 }], specimens: [{ areas: [11], areaM2: 0.01 }] }, 'calibration-not-monotone'],
    ['a detector that saturates', { calibration: amounts.map((amount) => ({ amount, area: 5 + 3 * amount - 0.1 * amount ** 2 + (amount % 4 ? 0.05 : -0.05) })), specimens: [{ areas: [11], areaM2: 0.01 }] }, 'calibration-bent'],
    ['a limit that cannot be seen', { calibration, specimens: [{ areas: [4], areaM2: 0.01 }], limitMgM2: 0.01 }, 'limit-below-detection'],
  ])('flags %s', (_what, input, code) => {
    expect(codes(input)).toContain(code);
  });

  it('does not flag standards that are straight', () => {
    expect(codes({ calibration, specimens: [{ areas: [13.5], areaM2: 0.01 }] })).toEqual([]);
  });

  it('gives no interval and no detection limit from two standards, and says so', () => {
    const { results, notes } = run({ calibration: [{ amount: 2, area: 5 }, { amount: 10, area: 21 }], specimens: [{ areas: [11], areaM2: 0.01 }] });
    expect(results.perSquareMetre).toMatchObject({ value: 0.5, low: null, high: null, bound: 'exact' });
    expect(results.detectionLimit!.value).toBeNull();
    expect(notes.join(' ')).toContain('two standards leave no scatter');
    // What reads below the least standard is then at most that.
    expect(run({ calibration: [{ amount: 2, area: 5 }, { amount: 10, area: 21 }], specimens: [{ areas: [3], areaM2: 0.01 }] }).results.perSquareMetre).toMatchObject({ value: 0.2, bound: 'at-most' });
  });

  it('weights by 1/x: the line then passes nearer to the small standards', () => {
    const scattered = [1, 2, 4, 8, 16].map((amount, i) => ({ amount, area: 2 * amount + [0.05, -0.05, 0.1, -0.3, 1.2][i]! }));
    const residualAtLeast = (weighting: string) => {
      const { slope, intercept } = run({ calibration: scattered, specimens: [{ areas: [10], areaM2: 0.01 }], weighting }).results;
      return Math.abs(2.05 - intercept!.value! - slope!.value!);
    };
    expect(residualAtLeast('1/x')).toBeLessThan(residualAtLeast('none'));
  });

  it.each([
    ['one amount', { calibration: [{ amount: 2, area: 5 }, { amount: 2, area: 5.1 }], specimens: [{ areas: [4], areaM2: 0.01 }] }, 'calibration'],
    ['areas that fall with the amount', { calibration: [{ amount: 2, area: 9 }, { amount: 4, area: 5 }, { amount: 6, area: 2 }], specimens: [{ areas: [4], areaM2: 0.01 }] }, 'calibration'],
    ['a standard of nothing weighted by its amount', { calibration, specimens: [{ areas: [4], areaM2: 0.01 }], weighting: '1/x' }, 'calibration[0].amount'],
    ['blanks asked for and not given', { calibration, specimens: [{ areas: [4], areaM2: 0.01 }], sigma: 'blanks', blanks: [1] }, 'blanks'],
    ['standards without specimen', { calibration }, 'specimens'],
    ['a specimen without area', { calibration, specimens: [{ areas: [4], areaM2: 0 }] }, 'specimens[0].areaM2'],
    ['neither calibration nor extraction', { specimens: [{ areas: [4], areaM2: 0.01 }] }, 'calibration'],
    ['both', { calibration, specimens: [{ areas: [4], areaM2: 0.01 }], headspace: { sampleAreas: [2, 1], standardAreas: [2, 1], standardUg: 1 } }, 'calibration'],
    ['a negative peak', { calibration, specimens: [{ areas: [-1], areaM2: 0.01 }] }, 'specimens[0].areas[0]'],
  ])('refuses %s', (_what, input, field) => {
    expect(() => run(input)).toThrow(InputError);
    expect(() => run(input)).toThrow(expect.objectContaining({ field }));
  });
});

describe('several solvents', () => {
  it('adds up what was found, with an interval that is wider than that of either', () => {
    const { results, table } = run({ solvents: [solvent('ethyl acetate', [13.5]), solvent('n-propanol', [9.64])] });
    expect(results.total!.value).toBeCloseTo(0.6207 + 0.4207, 3);
    expect(results.total!.high! - results.total!.low!).toBeGreaterThan((table[0]!.high as number) - (table[0]!.low as number));
    expect(table.map((row) => row.solvent)).toEqual(['ethyl acetate', 'n-propanol']);
    expect(results.slope).toBeUndefined();
  });

  it('takes solvents that rise and fall together at their word: the total scatters as the specimens’ sums do', () => {
    const together = run({ solvents: [solvent('a', [11.5, 13.5, 15.5]), solvent('b', [11.5, 13.5, 15.5])] }).results.total!;
    const against = run({ solvents: [solvent('a', [11.5, 13.5, 15.5]), solvent('b', [15.5, 13.5, 11.5])] }).results.total!;
    expect(together.value).toBeCloseTo(against.value!, 10);
    expect(together.high! - together.low!).toBeGreaterThan(2 * (against.high! - against.low!));
  });

  it('is honest about what was not found', () => {
    const some = run({ solvents: [solvent('a', [13.5]), solvent('b', [1.6])] });
    const detection = some.table[1]!.detectionLimit as number;
    expect(some.results.total).toMatchObject({ bound: 'between', low: some.table[0]!.low, level: null });
    expect(some.results.total!.high!).toBeCloseTo((some.table[0]!.high as number) + detection, 10);
    const none = run({ solvents: [solvent('a', [1.6]), solvent('b', [1.6])] }).results.total!;
    expect(none).toMatchObject({ bound: 'at-most', value: 2 * detection });
  });

  it('holds each against its own limit, and the worst of them counts', () => {
    const { results } = run({ solvents: [solvent('a', [13.5], { limitMgM2: 5 }), solvent('b', [9.64], { limitMgM2: 0.5 })] });
    expect(results.shareOfLimitPct!.value).toBeCloseTo(84.15, 1);
    // b is 84 % of its limit, but its interval reaches beyond: the share must as well.
    expect(results.shareOfLimitPct!.high!).toBeGreaterThan(95);
    const hidden = run({ solvents: [solvent('a', [13.5], { limitMgM2: 5 }), solvent('b', [1.6], { limitMgM2: 0.05 })] }).results.shareOfLimitPct!;
    expect(hidden.bound).toBe('between');
    expect(hidden.high!).toBeGreaterThan(100);
    expect(run({ solvents: [solvent('a', [1.6], { limitMgM2: 5 })] }).results.shareOfLimitPct).toMatchObject({ bound: 'at-most' });
    expect(run({ solvents: [solvent('a', [13.5])] }).results.shareOfLimitPct!.value).toBeNull();
  });

  it.each([
    ['two of one name', { solvents: [solvent('a', [4]), solvent('a', [4])] }, 'solvents[1].name'],
    ['unlike numbers of specimens', { solvents: [solvent('a', [4, 5]), solvent('b', [4])] }, 'solvents[1].specimens'],
    ['a list and a single one', { solvents: [solvent('a', [4])], calibration }, 'solvents'],
  ])('refuses %s', (_what, input, field) => {
    expect(() => run(input)).toThrow(expect.objectContaining({ field }));
  });
});

describe('multiple headspace extraction', () => {
  const headspace = { sampleAreas: [10050, 5980, 3620, 2150], standardAreas: [8000, 4800, 2880, 1728], standardUg: 10, areaM2: 0.01 };

  it('has an interval from the scatter about both lines', () => {
    const { amountUg, perSquareMetre } = run({ headspace }).results;
    expect(amountUg!.low!).toBeLessThan(amountUg!.value!);
    expect(perSquareMetre!.high! / perSquareMetre!.value!).toBeCloseTo(amountUg!.high! / amountUg!.value!, 10);
  });

  it('gives the mass alone where the area is not known', () => {
    const { results, notes } = run({ headspace: { ...headspace, areaM2: undefined } });
    expect(results.perSquareMetre!.value).toBeNull();
    expect(results.amountUg!.value).toBeGreaterThan(12);
    expect(notes.join(' ')).toContain('areaM2');
  });

  it.each([
    ['areas that do not fall', [100, 100, 101], 'headspace.sampleAreas'],
    ['a bent line', [10000, 5800, 3600, 2400], 'headspace.sampleAreas'],
    ['a line that no area keeps to', [10000, 4000, 3900, 1000], 'headspace.sampleAreas'],
    ['a step without a peak', [100, 50, 0], 'headspace.sampleAreas[2]'],
  ])('refuses %s', (_what, sampleAreas, field) => {
    expect(() => run({ headspace: { ...headspace, sampleAreas } })).toThrow(expect.objectContaining({ field }));
  });

  it('flags an area some way off the line', () => {
    expect(codes({ headspace: { ...headspace, sampleAreas: [10000, 6400, 3600] } })).toContain('extraction-scatters');
  });
});

describe('the bench sheet', () => {
  const standards = (name: string) => calibration.map(({ amount, area }): Record<string, CellValue> => ({ solvent: name, vial: 'standard', amountUg: amount, area }));
  const peak = (name: string, specimen: string, area: number): Record<string, CellValue> => ({ solvent: name, vial: 'specimen', specimen, area });
  const rows = [...standards('ethyl acetate'), ...standards('n-propanol'), peak('ethyl acetate', 'A', 13.5), peak('n-propanol', 'A', 30), { ...peak('ethyl acetate', 'A', 13.7), limitMgM2: 5 }, peak('n-propanol', 'A', 9.5)];
  const evaluate = (sheet: Record<string, CellValue>[], conditions: Record<string, CellValue> = {}) => residualSolventMethod.evaluate(benchOf(residualSolventMethod, sheet, conditions));

  it('sorts the peaks of one run to their solvents and specimens', () => {
    const { results, table } = evaluate([...rows.slice(0, 15), ...rows.slice(16)]);
    expect(table).toHaveLength(2);
    expect(table[0]!.perSquareMetre).toBeCloseTo((13.6 - 1.51786) / 1.93036 / 10, 4);
    expect(results.total!.n).toBe(1);
    expect(results.shareOfLimitPct!.value).toBeCloseTo(12.52, 1);
  });

  it('names the row of a flag', () => {
    const { flags } = evaluate(rows.slice(0, 16));
    expect(flags).toContainEqual(expect.objectContaining({ code: 'outside-calibration', where: 'rows[15].area', text: expect.stringContaining('n-propanol') }));
  });

  it('reads the steps of a multiple extraction in their order', () => {
    const steps = [...[10000, 6000, 3600, 2160].map((area) => peak('toluene', '1', area)), ...[8000, 4800, 2880, 1728].map((area): Record<string, CellValue> => ({ solvent: 'toluene', vial: 'standard', amountUg: 10, area }))];
    expect(evaluate(steps, { quantification: 'headspace' }).results.total!.value).toBeCloseTo(1.25, 10);
    expect(() => evaluate([...steps, peak('toluene', '2', 1000)], { quantification: 'headspace' })).toThrow(expect.objectContaining({ field: 'rows[8].specimen' }));
  });

  it.each([
    ['a standard without its amount', [...rows.slice(0, 16), { solvent: 'n-propanol', vial: 'standard', area: 4 }], 'rows[16].amountUg'],
    ['a solvent without standards', [...rows.slice(0, 7), peak('ethyl acetate', '1', 4), peak('acetone', '1', 4)], 'rows[8].vial'],
    ['a specimen that lacks a solvent', [...rows.slice(0, 16), peak('ethyl acetate', 'B', 5)], 'rows[7].specimen'],
    ['two limits for one solvent', [...rows.slice(0, 17), { ...peak('ethyl acetate', 'A', 4), limitMgM2: 6 }], 'rows[17].limitMgM2'],
    ['no specimen at all', rows.slice(0, 7), 'rows[0].vial'],
  ])('points at %s', (_what, sheet, field) => {
    expect(() => evaluate(sheet as Record<string, CellValue>[])).toThrow(expect.objectContaining({ field }));
  });
});
