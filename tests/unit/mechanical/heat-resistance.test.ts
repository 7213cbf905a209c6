import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { runCalculation } from '../../../shared-lib/calculation/calculation.ts';
import { heatResistanceCalculation } from '../../../shared-lib/mechanical/heat-resistance.calculation.ts';
import { heatResistanceMethod } from '../../../shared-lib/mechanical/heat-resistance.method.ts';
import { judge } from '../../../shared-lib/method/verdict.ts';
import { bench } from '../colour/bench.ts';
import { refusal } from '../surface-energy/refusal.ts';

type Step = [celsius: number, tested: unknown, failed: unknown];
const run = (steps: Step[]) => runCalculation(heatResistanceCalculation, { steps: steps.map(([celsius, tested, failed]) => ({ celsius, tested, failed })) });
const mixed: Step[] = [[120, 5, 0], [130, 5, 1], [140, 5, 3], [150, 5, 5]];

describe('heat resistance', () => {
  it('gives temperatures with intervals, a table and a curve', () => {
    const { results, table, figures } = run(mixed);
    const { t50, t05 } = results;
    expect(t05!.value!).toBeLessThan(t50!.value!);
    expect(t50!.low!).toBeLessThan(t50!.value!);
    expect(t50!.high!).toBeGreaterThan(t50!.value!);
    expect(table).toHaveLength(4);
    expect(table[2]).toMatchObject({ celsius: 140, failedPct: 60 });
    expect(figures[0]!.series.map(({ role }) => role)).toEqual(['reading', 'fit']);
  });

  it('does not care for the order of the steps or one step in two rows', () => {
    const { t50 } = run(mixed).results;
    expect(run([...mixed].reverse()).results.t50).toEqual(t50);
    expect(run([[120, 5, 0], [130, 2, 0], [140, 5, 3], [130, 3, 1], [150, 5, 5]]).results.t50).toEqual(t50);
  });

  it('shifts and stretches with the temperatures', () => {
    const { t50 } = run(mixed).results;
    const moved = run(mixed.map(([celsius, ...counts]) => [2 * celsius - 100, ...counts])).results.t50!;
    expect(moved.value).toBeCloseTo(2 * t50!.value! - 100, 6);
    expect(moved.high).toBeCloseTo(2 * t50!.high! - 100, 6);
  });

  it('leaves open the side that the steps do not bound, and says so', () => {
    const { results, notes, flags } = run([[120, 5, 2], [130, 5, 1], [140, 5, 3], [150, 5, 2]]);
    expect(results.t50!.low === null || results.t50!.high === null).toBe(true);
    expect(notes.join(' ')).toContain('too little');
    expect(flags.map(({ code }) => code)).toContain('extrapolated');
  });

  it('gives no temperature where fewer fail when it is hotter', () => {
    for (const steps of [[[120, 5, 5], [130, 5, 0]], [[120, 5, 3], [130, 5, 1], [140, 5, 1]], [[120, 5, 5], [130, 5, 2]]] as Step[][]) {
      const { results, flags } = run(steps);
      expect(results.t50!.value).toBeNull();
      expect(flags.map(({ code }) => code)).toContain('not-rising');
    }
  });

  it('flags failures that scatter more than chance allows', () => {
    const { flags } = run([[120, 40, 0], [130, 40, 30], [140, 40, 4], [150, 40, 38]]);
    expect(flags.map(({ code }) => code)).toContain('poor-fit');
    expect(run(mixed).flags).toEqual([]);
  });

  it('a bound decides a limit that it lies beyond, and no other', () => {
    const { t50 } = run([[120, 5, 0], [130, 5, 0]]).results;
    const word = (lower: number) => judge(t50!, { property: 't50', lower, upper: null, source: '' }, 'guarded').verdict;
    expect(word(125)).toBe('meets');
    expect(word(140)).toBe('undecided');
  });

  it('never gives a number that is not finite, whatever the counts', () => {
    const steps = fc.array(fc.tuple(fc.integer({ min: 60, max: 220 }), fc.integer({ min: 1, max: 12 }), fc.integer({ min: 0, max: 12 })), { minLength: 2, maxLength: 8 });
    fc.assert(
      fc.property(steps, (given) => {
        fc.pre(new Set(given.map(([celsius]) => celsius)).size > 1);
        const { t50, t05 } = run(given.map(([celsius, tested, failed]) => [celsius, tested, Math.min(tested, failed)])).results;
        for (const { value, low, high, bound } of [t50!, t05!]) {
          if (low !== null && value !== null) expect(low).toBeLessThanOrEqual(value);
          if (high !== null && value !== null) expect(high).toBeGreaterThanOrEqual(value);
          if (bound === 'exact' && value === null) expect([low, high]).toEqual([null, null]);
        }
      }),
      { seed: 8, numRuns: 400 },
    );
  });
});

describe('bad counts are refused', () => {
  it.each([
    ['more failed than tested', [[120, 5, 6], [130, 5, 5]], 'steps[0].failed', /cannot be more than tested/],
    ['one temperature only', [[120, 5, 1], [120, 5, 2]], 'steps[0].celsius', /two different temperatures/],
    ['half a specimen', [[120, 5, 0.5], [130, 5, 5]], 'steps[0].failed', /whole number/],
    ['a negative count', [[120, 5, -1], [130, 5, 5]], 'steps[0].failed', /at least 0/],
    ['nothing tested', [[120, 0, 0], [130, 5, 5]], 'steps[0].tested', /at least 1/],
    ['a count in words', [[120, 5, 'two'], [130, 5, 5]], 'steps[0].failed', /must be a number, not "two"/],
    ['a temperature no print ever saw', [[120, 5, 0], [9000, 5, 5]], 'steps[1].celsius', /at most 600/],
  ] as [string, Step[], string, RegExp][])('%s', (_, steps, field, message) => {
    const error = refusal(() => run(steps));
    expect(error.field).toBe(field);
    expect(error.message).toMatch(message);
  });

  it('on the sheet the cell is named, blank rows apart', () => {
    const sheet = (rows: Parameters<typeof bench>[0]) => bench(rows, { failure: 'ink on the jaw' });
    expect(refusal(() => heatResistanceMethod.evaluate(sheet([{ celsius: 120, tested: 5, failed: 0 }, {}, { celsius: 130, tested: 5, failed: 6 }]))).field).toBe('rows[2].failed');
    expect(refusal(() => heatResistanceMethod.evaluate(sheet([{ celsius: 120, tested: 5, failed: 0 }, { tested: 5 }]))).field).toBe('rows[0].celsius');
    expect(refusal(() => heatResistanceMethod.evaluate(sheet([{ celsius: 120, tested: 5, failed: 0 }, { celsius: 130, tested: 5 }]))).field).toBe('rows[1].failed');
  });
});
