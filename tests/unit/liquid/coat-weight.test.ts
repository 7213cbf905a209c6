import { describe, expect, it } from 'vitest';
import { runCalculation } from '../../../shared-lib/calculation/calculation.ts';
import { coatWeightCalculation } from '../../../shared-lib/liquid/coat-weight.calculation.ts';
import { coatWeightMethod } from '../../../shared-lib/liquid/coat-weight.method.ts';
import { benchOf } from '../release/bench.ts';

const run = (input: unknown) => runCalculation(coatWeightCalculation, input);
const pieces = (coatsMg: number[]) => coatsMg.map((mg) => ({ areaM2: 0.01, coatedG: 0.6 + mg / 1000, bareG: 0.6 }));

describe('coat-weight', () => {
  it('gives the t interval over the pieces', () => {
    const { results } = run({ specimens: pieces([17, 18, 19]) });
    expect(results.dry!.value).toBeCloseTo(1.8, 10);
    // s = 0.1 g/m², t(0.975, 2) = 4.303: ±0.2484.
    expect(results.dry!.high! - results.dry!.value!).toBeCloseTo(0.2484, 4);
    expect(results.spread!.value).toBeCloseTo(0.1, 10);
    // 0.1·√(2/χ²), χ²(0.975; 2) = 7.3778 and χ²(0.025; 2) = 0.05064 (table).
    expect(results.spread!.low).toBeCloseTo(0.0521, 4);
    expect(results.spread!.high).toBeCloseTo(0.6285, 3);
    expect(run({ specimens: pieces([17]) }).results.spread).toMatchObject({ value: null, low: null });
  });

  it('takes solids from a wet weighing', () => {
    const { results, table } = run({ specimens: [{ areaM2: 0.01, coatedG: 0.618, bareG: 0.6, wetG: 0.66 }] });
    expect(results.wet!.value).toBeCloseTo(6, 10);
    expect(results.solidsPct!.value).toBeCloseTo(30, 8);
    expect(table[0]!.differenceMg).toBeCloseTo(18, 8);
  });

  it('carries the interval over to the wet coat that follows from the solids', () => {
    const { dry, wet } = run({ specimens: pieces([17, 18, 19]), solidsPct: 30 }).results;
    expect(wet!.high! / wet!.value!).toBeCloseTo(dry!.high! / dry!.value!, 10);
  });

  it.each([
    ['a difference of few steps of the balance', { specimens: pieces([1.5, 18]), readabilityMg: 0.1 }, 'few-balance-steps', 'specimens[0]'],
    ['a piece far from the others', { specimens: pieces([18, 18.1, 17.9, 18.05, 17.95, 25]) }, 'outlier', 'specimens[5]'],
  ])('flags %s', (_what, input, code, where) => {
    expect(run(input).flags).toContainEqual(expect.objectContaining({ code, where }));
  });

  it.each([
    ['a bare piece that is heavier', { specimens: [{ areaM2: 0.01, coatedG: 0.6, bareG: 0.61 }] }, 'specimens[0].bareG'],
    ['a wet piece that is lighter', { specimens: [{ areaM2: 0.01, coatedG: 0.62, bareG: 0.6, wetG: 0.61 }] }, 'specimens[0].wetG'],
    ['some weighed wet', { specimens: [{ areaM2: 0.01, coatedG: 0.62, bareG: 0.6, wetG: 0.65 }, ...pieces([18])] }, 'specimens[1].wetG'],
    ['solids beside a wet weighing', { specimens: [{ areaM2: 0.01, coatedG: 0.62, bareG: 0.6, wetG: 0.65 }], solidsPct: 30 }, 'solidsPct'],
    ['no area', { specimens: [{ areaM2: 0, coatedG: 0.62, bareG: 0.6 }] }, 'specimens[0].areaM2'],
  ])('refuses %s', (_what, input, field) => {
    expect(() => run(input)).toThrow(expect.objectContaining({ field }));
  });
});

describe('coat-weight sheet', () => {
  it('reads pieces of the stated area, and names the row of a flag and of a refusal', () => {
    const evaluate = (rows: Record<string, number>[]) => coatWeightMethod.evaluate(benchOf(coatWeightMethod, rows));
    expect(evaluate([{ coatedG: 0.632, bareG: 0.614 }]).results.dry!.value).toBeCloseTo(1.8, 10);
    expect(evaluate([{}, { coatedG: 0.6005, bareG: 0.6 }]).flags[0]).toMatchObject({ code: 'few-balance-steps', where: 'rows[1].coatedG' });
    expect(() => evaluate([{}, { coatedG: 0.6, bareG: 0.7 }])).toThrow(expect.objectContaining({ field: 'rows[1].bareG' }));
  });
});
