import { describe, expect, it } from 'vitest';
import type { CellValue } from '../../../shared-lib/method/method.ts';
import { letDownMethod } from '../../../shared-lib/liquid/let-down.method.ts';
import { benchOf } from '../release/bench.ts';

const evaluate = (rows: Record<string, CellValue>[], conditions: Record<string, CellValue>) => letDownMethod.evaluate(benchOf(letDownMethod, rows, conditions));

/** 100 g of ink; ln ν falls in a straight line from 400 mm²/s by 0.05 for each percent of diluent. */
const atPct = (pct: number) => ({ diluentG: (100 * pct) / (100 - pct), mm2S: 400 * Math.exp(-0.05 * pct) });

describe('let-down to a viscosity', () => {
  const rows = [0, 10, 20, 30].map(atPct);

  it('reads the diluent off the line through the additions', () => {
    const { results, figures } = evaluate(rows, { inkG: 100, targetMm2S: 400 * Math.exp(-0.05 * 15), inkSolidsPct: 40, batchKg: 85 });
    expect(results.letDownPct!.value).toBeCloseTo(15, 8);
    // 15 in 85: 17.647 per 100 parts, 15 kg for 85 kg; solids 40 % · 0.85.
    expect(results.letDownParts!.value).toBeCloseTo((100 * 15) / 85, 7);
    expect(results.letDownKg!.value).toBeCloseTo(15, 7);
    expect(results.letDownSolidsPct!.value).toBeCloseTo(34, 7);
    expect(figures[0]!.id).toBe('let-down');
  });

  it('takes seconds of a cup, and flags those outside its range', () => {
    const seconds = (mm2S: number) => mm2S / 3.85 + 4.49;
    const timed = rows.map(({ diluentG, mm2S }) => ({ diluentG, seconds: seconds(mm2S) }));
    const { results, flags } = evaluate(timed, { inkG: 100, cup: 'd1200-4', targetSeconds: seconds(400 * Math.exp(-0.05 * 15)) });
    expect(results.letDownPct!.value).toBeCloseTo(15, 8);
    expect(flags).toContainEqual(expect.objectContaining({ code: 'outside-cup-range', where: 'rows[0].seconds' }));
  });

  it.each([
    ['two additions', rows.slice(0, 2), { inkG: 100, targetMm2S: 300 }, ''],
    ['no target', rows, { inkG: 100 }, 'conditions.targetMm2S'],
    ['a target that was not tried', rows, { inkG: 100, targetMm2S: 20 }, 'conditions.targetMm2S'],
    ['no mass of ink', rows, { targetMm2S: 200 }, 'conditions.inkG'],
    ['seconds without a cup', rows.map(({ diluentG }) => ({ diluentG, seconds: 30 })), { inkG: 100, targetMm2S: 200 }, 'conditions.cup'],
    ['mm²/s with a cup', rows, { inkG: 100, cup: 'd1200-4', targetSeconds: 20 }, 'rows[0].seconds'],
    ['a time in which nothing flows', [{ diluentG: 0, seconds: 3 }], { inkG: 100, cup: 'd1200-4', targetSeconds: 20 }, 'rows[0].seconds'],
    ['an ink that thickens', [...rows].reverse().map(({ mm2S }, index) => ({ diluentG: rows[index]!.diluentG, mm2S })), { inkG: 100, targetMm2S: 200 }, ''],
  ])('refuses %s', (_what, sheet, conditions, field) => {
    expect(() => evaluate(sheet, conditions)).toThrow(expect.objectContaining({ field }));
  });
});

describe('let-down to a strength', () => {
  it('is in proportion to the share of ink, with the interval of the drawdowns', () => {
    const { results } = evaluate([{ strengthPct: 124 }, { strengthPct: 125 }, { strengthPct: 126 }], { goal: 'strength', targetStrengthPct: 100 });
    expect(results.letDownPct!.value).toBeCloseTo(20, 10);
    // 125 ± 2.484 (t 4.303, s 1, n 3): 100·(1 − 100/122.516) and 100·(1 − 100/127.484).
    expect(results.letDownPct!.low!).toBeCloseTo(18.378, 2);
    expect(results.letDownPct!.high!).toBeCloseTo(21.559, 2);
    expect(evaluate([{ strengthPct: 125 }], { goal: 'strength', targetStrengthPct: 100 }).results.letDownPct).toMatchObject({ low: null, high: null, n: 1 });
  });

  it.each([
    ['no strength', [{ diluentG: 5 }], { targetStrengthPct: 100 }, 'rows[0].strengthPct'],
    ['no target', [{ strengthPct: 120 }], {}, 'conditions.targetStrengthPct'],
    ['a target that is stronger', [{ strengthPct: 90 }], { targetStrengthPct: 100 }, 'conditions.targetStrengthPct'],
  ])('refuses %s', (_what, sheet, conditions, field) => {
    expect(() => evaluate(sheet as Record<string, CellValue>[], { goal: 'strength', ...conditions })).toThrow(expect.objectContaining({ field }));
  });
});
