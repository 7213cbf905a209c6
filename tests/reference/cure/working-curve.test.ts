import { describe, expect, it } from 'vitest';
import { runCalculation } from '../../../shared-lib/calculation/calculation.ts';
import { cureDepthCalculation } from '../../../shared-lib/cure/cure-depth.calculation.ts';
import { fitWorkingCurve } from '../../../shared-lib/cure/working-curve.ts';

/* Closed loop, exact algebra: depths made by D = D_p·ln(E/E_c) (P. F. Jacobs, Rapid Prototyping & Manufacturing, 1992, from
   memory) with D_p 8 µm and E_c 12 mJ/cm² must give them back, and E_c·e^(h/D_p) for a film of h. */
it('gives back the line that the depths were made with', () => {
  const doses = [20, 40, 80, 160, 320];
  const readings = doses.map((doseMJPerCm2) => ({ doseMJPerCm2, curedUm: 8 * Math.log(doseMJPerCm2 / 12) }));
  const { penetrationDepth, criticalDose, doseThrough, doseMargin } = runCalculation(cureDepthCalculation, { readings, filmUm: 10, workingDoseMJPerCm2: 80 }).results;
  expect(penetrationDepth!.value).toBeCloseTo(8, 9);
  expect(criticalDose!.value).toBeCloseTo(12, 8);
  expect(doseThrough!.value).toBeCloseTo(12 * Math.exp(10 / 8), 8);
  expect(doseMargin!.value).toBeCloseTo(80 / (12 * Math.exp(1.25)), 8);
});

/* Fieller's interval holds by its own definition: at each end the distance from the line is t standard errors of the line
   (worked anew from the sums of squares; t(0.975; 2) = 4.302653, any table). */
describe('interval of the dose', () => {
  const pairs = [[20, 3.1], [40, 9.8], [80, 17.2], [160, 23.5]] as const;
  const x = pairs.map(([dose]) => Math.log(dose));
  const y = pairs.map(([, depth]) => depth);
  const mean = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0) / values.length;
  const sxx = x.reduce((sum, value) => sum + (value - mean(x)) ** 2, 0);
  const slope = x.reduce((sum, value, i) => sum + (value - mean(x)) * (y[i]! - mean(y)), 0) / sxx;
  const line = (at: number) => mean(y) + slope * (at - mean(x));
  const s = Math.sqrt(x.reduce((sum, value, i) => sum + (y[i]! - line(value)) ** 2, 0) / 2);

  it.each(['low', 'high'] as const)('the %s end', (end) => {
    const at = Math.log(fitWorkingCurve(pairs, 0.95)!.doseFor(10)[end]!);
    const standardError = s * Math.sqrt(1 / 4 + (at - mean(x)) ** 2 / sxx);
    expect(Math.abs(line(at) - 10) / standardError).toBeCloseTo(4.302653, 4);
  });
});
