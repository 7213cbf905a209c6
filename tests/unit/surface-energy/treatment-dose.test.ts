import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { runCalculation } from '../../../shared-lib/calculation/calculation.ts';
import { treatmentDoseCalculation } from '../../../shared-lib/surface-energy/treatment-dose.calculation.ts';
import { refusal } from './refusal.ts';

const run = (input: unknown) => runCalculation(treatmentDoseCalculation, input).results;

describe('treatment dose', () => {
  it('any three give the fourth back', () => {
    const positive = fc.double({ min: 1, max: 1000, noNaN: true });
    fc.assert(
      fc.property(positive, positive, positive, fc.constantFrom(1, 2), (powerW, widthMm, speedMPerMin, sides) => {
        const doseWMinPerM2 = run({ powerW, widthMm, speedMPerMin, sides }).dose!.value!;
        fc.pre(doseWMinPerM2 < 100_000);
        const all = { powerW, widthMm, speedMPerMin, doseWMinPerM2 };
        for (const missing of ['powerW', 'widthMm', 'speedMPerMin'] as const) {
          const { [missing]: left, ...three } = all;
          expect(run({ ...three, sides })[missing]!.value! / left).toBeCloseTo(1, 9);
        }
      }),
    );
  });

  it.each([
    [{ powerW: 5000, widthMm: 1500 }, 'speedMPerMin'],
    [{ powerW: 5000, widthMm: 1500, speedMPerMin: 150, doseWMinPerM2: 22 }, 'doseWMinPerM2'],
    [{ powerW: 0, widthMm: 1500, speedMPerMin: 150 }, 'powerW'],
    [{ powerW: 5000, widthMm: 1500, speedMPerMin: 150, sides: 3 }, 'sides'],
  ])('refuses %j', (input, field) => {
    expect(refusal(() => run(input)).field).toBe(field);
  });
});
