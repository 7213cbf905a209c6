import { describe, expect, it } from 'vitest';
import { runCalculation } from '../../../shared-lib/calculation/calculation.ts';
import { flowCupIds, flowCups } from '../../../shared-lib/liquid/flow-cups.ts';
import { viscosityCupCalculation } from '../../../shared-lib/liquid/viscosity-cup.calculation.ts';
import { viscosityCupMethod } from '../../../shared-lib/liquid/viscosity-cup.method.ts';
import { benchOf } from '../release/bench.ts';

const run = (input: unknown) => runCalculation(viscosityCupCalculation, input);
const codes = (input: unknown) => run(input).flags.map(({ code }) => code);

describe('viscosity-cup', () => {
  it('carries the interval of the runs through the formula', () => {
    const { seconds, kinematicMm2S } = run({ cup: 'd1200-4', seconds: [29, 30, 31], temperatureC: 25 }).results;
    // s = 1, t(0.975, 2) = 4.3027, /√3: ±2.484 s; 3.85 mm²/s for each.
    expect(seconds!.high! - 30).toBeCloseTo(2.484, 3);
    expect(kinematicMm2S).toMatchObject({ n: 3, level: 0.95 });
    expect(kinematicMm2S!.high! - kinematicMm2S!.value!).toBeCloseTo(3.85 * 2.484, 2);
  });

  it('rises with the time in every cup, from its shortest to its longest time', () => {
    for (const id of flowCupIds) {
      const { from, to, viscosity } = flowCups[id];
      expect(viscosity(from)).toBeGreaterThan(0);
      expect(viscosity(to)).toBeGreaterThan(viscosity(from));
    }
  });

  it.each([
    ['a time beyond the range', { cup: 'd1200-4', seconds: 150, temperatureC: 25 }, 'outside-cup-range'],
    ['a viscosity beyond the range', { cup: 'd1200-4', kinematicMm2S: 20, temperatureC: 25 }, 'outside-cup-range'],
    ['another temperature', { cup: 'd1200-4', seconds: 30, temperatureC: 22 }, 'other-temperature'],
    ['no temperature', { cup: 'd1200-4', seconds: 30 }, 'no-temperature'],
    ['runs that lie apart', { cup: 'd1200-4', seconds: [30, 33], temperatureC: 25 }, 'runs-apart'],
  ])('flags %s', (_what, input, code) => {
    expect(codes(input)).toContain(code);
  });

  it('flags nothing within the range, at the temperature of the standard', () => {
    expect(codes({ cup: 'd1200-4', seconds: [30, 30.4], temperatureC: 25 })).toEqual([]);
    expect(codes({ cup: 'iso2431-4', seconds: [40, 40.4], temperatureC: 23 })).toEqual([]);
  });

  it.each([
    ['neither time nor viscosity', { cup: 'd1200-4' }, 'seconds'],
    ['both', { cup: 'd1200-4', seconds: 30, kinematicMm2S: 100 }, 'seconds'],
    ['a time in which nothing flows', { cup: 'd1200-4', seconds: 4 }, 'seconds'],
    ['one such among several', { cup: 'iso2431-4', seconds: [30, 10] }, 'seconds[1]'],
    ['an unknown cup', { cup: 'd1200-9', seconds: 30 }, 'cup'],
  ])('refuses %s', (_what, input, field) => {
    expect(() => run(input)).toThrow(expect.objectContaining({ field }));
  });

  it('evaluates its sheet and points at the run at fault', () => {
    const sheet = (seconds: number[]) => viscosityCupMethod.evaluate(benchOf(viscosityCupMethod, seconds.map((one) => ({ seconds: one })), { cup: 'd1200-4', temperatureC: 25 }));
    expect(sheet([30, 30]).results.kinematicMm2S!.value).toBeCloseTo(98.2135, 4);
    expect(() => sheet([30, 3])).toThrow(expect.objectContaining({ field: 'rows[1].seconds' }));
  });

  it('gives every cup a key of its own', () => {
    const field = viscosityCupMethod.conditions.find(({ key }) => key === 'cup')!;
    const keys = field.kind === 'choice' ? field.choices.map(({ shortcut }) => shortcut) : [];
    expect(new Set(keys).size).toBe(flowCupIds.length);
  });
});
