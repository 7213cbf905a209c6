import { describe, expect, it } from 'vitest';
import { runCalculation } from '../../../shared-lib/calculation/calculation.ts';
import { cureDepthCalculation } from '../../../shared-lib/cure/cure-depth.calculation.ts';
import { cureDepthMethod } from '../../../shared-lib/cure/cure-depth.method.ts';
import { bench } from '../colour/bench.ts';
import { refusal } from '../surface-energy/refusal.ts';

const readings = (pairs: [number, number][]) => pairs.map(([doseMJPerCm2, curedUm]) => ({ doseMJPerCm2, curedUm }));
const run = (pairs: [number, number][], more: object = {}) => runCalculation(cureDepthCalculation, { readings: readings(pairs), filmUm: 10, ...more });
const scattered: [number, number][] = [[20, 3.1], [40, 9.8], [80, 17.2], [160, 23.5]];

describe('depth of cure', () => {
  it('reads the dose off the line, with an interval around it', () => {
    const { doseThrough, doseMargin, penetrationDepth } = run(scattered, { workingDoseMJPerCm2: 80 }).results;
    expect(doseThrough!.low!).toBeLessThan(doseThrough!.value!);
    expect(doseThrough!.high!).toBeGreaterThan(doseThrough!.value!);
    expect(doseMargin!.value).toBeCloseTo(80 / doseThrough!.value!, 12);
    expect(doseMargin!.low).toBeCloseTo(80 / doseThrough!.high!, 12);
    expect(penetrationDepth!.unit).toBe('µm');
  });

  it('share at the working dose, never above the whole', () => {
    expect(run(scattered, { workingDoseMJPerCm2: 20 }).results.curedPct!.value).toBeCloseTo(31, 9);
    expect(run(scattered, { workingDoseMJPerCm2: 160 }).results.curedPct).toMatchObject({ value: 100, low: null });
    expect(run([[50, 6], [50, 8]]).results.curedPct!.value).toBeCloseTo(70, 9);
    expect(run(scattered, { workingDoseMJPerCm2: 60 }).flags.map(({ code }) => code)).toContain('working-dose-not-read');
  });

  it('leaves out of the line what the drawdown cut short or the dose did not start, and flags both', () => {
    const { flags, results, figures } = run([[5, 0], ...scattered, [320, 25]], { drawdownUm: 25 });
    expect(flags.map(({ code }) => code)).toEqual(['cut-short', 'nothing-cured']);
    expect(results.doseThrough!.n).toBe(4);
    expect(results.doseThrough!.value).toBeCloseTo(run(scattered).results.doseThrough!.value!, 9);
    expect(figures[0]!.series[0]!.points.at(-1)).toMatchObject({ open: 'up' });
  });

  it('says that a dose beyond those measured follows from the line alone', () => {
    expect(run(scattered, { filmUm: 40 }).flags.map(({ code }) => code)).toEqual(['extrapolated']);
    expect(run(scattered).flags).toEqual([]);
  });

  it('two readings give a line without an interval; one dose or a falling depth none', () => {
    expect(run([[20, 3], [40, 9]]).results.doseThrough).toMatchObject({ low: null, high: null });
    for (const pairs of [[[20, 3], [20, 4]], [[20, 9], [40, 3]]] as [number, number][][]) {
      const { results, notes } = run(pairs);
      expect(results.doseThrough!.value).toBeNull();
      expect(notes[0]).toContain('No line');
    }
  });

  it('refuses what cannot be, and names the cell', () => {
    expect(refusal(() => run([[0, 3]])).field).toBe('readings[0].doseMJPerCm2');
    expect(refusal(() => run([[20, -1]])).field).toBe('readings[0].curedUm');
    expect(refusal(() => run([[20, 1], [40, 1.0001]], { filmUm: 1000 })).field).toBe('filmUm');
    expect(refusal(() => cureDepthMethod.evaluate(bench([{ doseMJPerCm2: 20 }], { filmUm: 10 }))).field).toBe('rows[0].curedUm');
    expect(refusal(() => cureDepthMethod.evaluate(bench([{}, { curedUm: 3 }], { filmUm: 10 }))).field).toBe('rows[1].doseMJPerCm2');
    expect(refusal(() => cureDepthMethod.evaluate(bench([{ doseMJPerCm2: 20, curedUm: 3 }]))).field).toBe('conditions.filmUm');
  });
});
