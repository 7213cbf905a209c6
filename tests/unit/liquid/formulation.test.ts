import { describe, expect, it } from 'vitest';
import { runCalculation } from '../../../shared-lib/calculation/calculation.ts';
import { InputError } from '../../../shared-lib/calculation/input-error.ts';
import { formulationCalculation } from '../../../shared-lib/liquid/formulation.calculation.ts';
import { fitLinear, predictLinear } from '../../../shared-lib/statistics/linear-regression.ts';

const work = (input: object) => runCalculation(formulationCalculation, input);
const column = (input: object, key: string) => work(input).table.map((row) => row[key]);
const refusal = (input: object): InputError => {
  try {
    work(input);
  } catch (error) {
    if (error instanceof InputError) return error;
    throw error;
  }
  throw new Error('not refused');
};

/** Made up; every expected figure is worked out by hand beside it. */
const ink = [
  { name: 'Binder', parts: 50, solidsPct: 40, costPerKg: 3 },
  { name: 'Pigment', parts: 12, solidsPct: 100, costPerKg: 11 },
  { name: 'Wax', parts: 3, solidsPct: 100, costPerKg: 5 },
  { name: 'Ester solvent', parts: 35, solidsPct: 0, costPerKg: 1.2 },
];

describe('formulation', () => {
  it('turns parts into percent, solids and cost', () => {
    const doubled = ink.map((component) => ({ ...component, parts: component.parts * 2 }));
    expect(column({ components: doubled }, 'pct')).toEqual([50, 12, 3, 35]);
    const { results } = work({ components: doubled });
    expect(results.totalParts!.value).toBe(200);
    expect(results.solidsPct!.value).toBeCloseTo(0.5 * 40 + 12 + 3, 12); // 35 %
    expect(results.costPerKg!.value).toBeCloseTo(1.5 + 1.32 + 0.15 + 0.42, 12); // 3.39
  });

  it('brings percentages to 100 % while held ones stay', () => {
    const given = { components: [{ name: 'Binder', pct: 50 }, { name: 'Pigment', pct: 12, hold: true }, { name: 'Wax', pct: 5, hold: true }, { name: 'Solvent', pct: 35 }] };
    const pct = column(given, 'pct') as number[];
    // 83 % is left for binder and solvent, 50 : 35
    expect(pct[0]).toBeCloseTo((83 * 50) / 85, 12);
    expect(pct.slice(1, 3)).toEqual([12, 5]);
    expect(pct.reduce((sum, share) => sum + share)).toBeCloseTo(100, 12);
    expect(work(given).notes[0]).toContain('brought to 100 %');
  });

  it('fills up to held percentages from parts', () => {
    expect(column({ components: [{ name: 'Wax', pct: 4, hold: true }, { name: 'Binder', parts: 2 }, { name: 'Solvent', parts: 1 }] }, 'pct')).toEqual([4, 64, 32]);
  });

  it('says how it differs from the control, component by component', () => {
    const { table } = work({ components: [{ name: 'Binder', parts: 96 }, { name: 'Promoter', parts: 4 }], control: [{ name: 'Binder', parts: 97 }, { name: 'Wax', parts: 3 }] });
    expect(table.map(({ name, controlPct, pct, differencePct, change }) => [name, controlPct, pct, differencePct, change])).toEqual([
      ['Binder', 97, 96, -1, 'less'],
      ['Promoter', 0, 4, 4, 'added'],
      ['Wax', 3, 0, -3, 'left out'],
    ]);
  });

  it('never takes unknown solids or cost for zero', () => {
    const { results, notes } = work({ components: [{ name: 'Binder', parts: 60, solidsPct: 50 }, { name: 'Additive', parts: 40, costPerKg: 10 }] });
    expect(results.solidsPct).toMatchObject({ low: 30, high: 70, bound: 'between' });
    expect(results.costPerKg).toMatchObject({ value: 4, low: 4, bound: 'at-least' });
    expect(notes.join(' ')).toContain('40 %');
    expect(work({ components: [{ name: 'Binder', parts: 1 }] }).results.costPerKg!.value).toBeNull();
  });

  it('gives the masses of a batch', () => {
    expect(column({ components: ink, batchKg: 5 }, 'massKg')).toEqual([2.5, 0.6, 0.15, 1.75]);
  });
});

describe('let-down', () => {
  it('to a strength is in proportion to the share of ink', () => {
    // 125 % ink to 100 %: 4 parts of ink and 1 of extender
    const { results } = work({ components: ink, letDown: { inkStrengthPct: 125, targetStrengthPct: 100, diluent: { name: 'Extender', solidsPct: 35, costPerKg: 2 } } });
    expect(results.letDownPct!.value).toBeCloseTo(20, 12);
    expect(results.letDownParts!.value).toBeCloseTo(25, 12);
    expect(results.letDownSolidsPct!.value).toBeCloseTo(35, 12);
    expect(results.letDownCostPerKg!.value).toBeCloseTo(0.8 * 3.39 + 0.4, 12);
  });

  it('to a viscosity by the mixing rule of logarithms', () => {
    // 100 and 1 mm²/s in equal masses give the geometric mean, 10
    expect(work({ components: ink, letDown: { inkMm2S: 100, diluentMm2S: 1, targetMm2S: 10 } }).results.letDownPct!.value).toBeCloseTo(50, 10);
  });

  it('from trial additions has Fieller’s interval: at its ends the band of the line just reaches the target', () => {
    const additions = [
      { pct: 0, mm2S: 92 },
      { pct: 5, mm2S: 67 },
      { pct: 10, mm2S: 51 },
      { pct: 15, mm2S: 36 },
      { pct: 20, mm2S: 28 },
    ];
    const { results } = work({ components: ink, letDown: { additions, targetMm2S: 45 } });
    const { value, low, high } = results.letDownPct!;
    const fit = fitLinear([additions.map(({ pct }) => pct)], additions.map(({ mm2S }) => Math.log(mm2S)), { intercept: true });
    expect(Math.exp(predictLinear(fit, [value!]).value)).toBeCloseTo(45, 9);
    expect(Math.exp(predictLinear(fit, [low!]).low!)).toBeCloseTo(45, 6);
    expect(Math.exp(predictLinear(fit, [high!]).high!)).toBeCloseTo(45, 6);
  });
});

describe('what cannot be used is refused with its field', () => {
  it.each<[string, object, string]>([
    ['no components', { components: [] }, 'components'],
    ['nothing in it', { components: [{ name: 'Binder', parts: 0 }] }, 'components'],
    ['neither parts nor percent', { components: [{ name: 'Binder' }] }, 'components[0].parts'],
    ['parts and percent', { components: [{ name: 'Binder', parts: 1, pct: 1 }] }, 'components[0].parts'],
    ['parts beside percent', { components: [{ name: 'Binder', parts: 1 }, { name: 'Wax', pct: 3 }] }, 'components[1].pct'],
    ['held without percent', { components: [{ name: 'Wax', parts: 1, hold: true }] }, 'components[0].hold'],
    ['held beyond 100 %', { components: [{ name: 'A', pct: 60, hold: true }, { name: 'B', pct: 50, hold: true }] }, 'components'],
    ['held below 100 % with nothing to fill up', { components: [{ name: 'A', pct: 60, hold: true }] }, 'components'],
    ['a negative part', { components: [{ name: 'Binder', parts: -1 }] }, 'components[0].parts'],
    ['solids beyond 100 %', { components: [{ name: 'Binder', parts: 1, solidsPct: 101 }] }, 'components[0].solidsPct'],
    ['a control without parts', { components: ink, control: [{ name: 'Binder' }] }, 'control[0].parts'],
    ['a target stronger than the ink', { components: ink, letDown: { inkStrengthPct: 90, targetStrengthPct: 100 } }, 'letDown.targetStrengthPct'],
    ['a target without the ink', { components: ink, letDown: { targetMm2S: 20 } }, 'letDown.inkMm2S'],
    ['a target thicker than the ink', { components: ink, letDown: { inkMm2S: 50, diluentMm2S: 1, targetMm2S: 60 } }, 'letDown.targetMm2S'],
    ['no target', { components: ink, letDown: {} }, 'letDown'],
    ['viscosity that rises', { components: ink, letDown: { targetMm2S: 30, additions: [{ pct: 0, mm2S: 20 }, { pct: 5, mm2S: 30 }, { pct: 10, mm2S: 40 }] } }, 'letDown.additions'],
    ['a target beyond what was tried', { components: ink, letDown: { targetMm2S: 5, additions: [{ pct: 0, mm2S: 40 }, { pct: 5, mm2S: 30 }, { pct: 10, mm2S: 22 }] } }, 'letDown.targetMm2S'],
  ])('%s', (_what, input, field) => {
    const error = refusal(input);
    expect(error.field).toBe(field);
    expect(error.message).not.toMatch(/NaN|undefined|null/);
  });
});
