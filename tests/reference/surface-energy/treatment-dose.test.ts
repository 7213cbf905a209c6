import { describe, expect, it } from 'vitest';
import { runCalculation } from '../../../shared-lib/calculation/calculation.ts';
import { treatmentDoseCalculation } from '../../../shared-lib/surface-energy/treatment-dose.calculation.ts';

const run = (input: unknown) => runCalculation(treatmentDoseCalculation, input).results;

describe('watt density: power over width, speed and sides (definition)', () => {
  it('5 kW, 1.5 m, 150 m/min: 22.222 W·min/m² on one side, 11.111 on two', () => {
    const one = { powerW: 5000, widthMm: 1500, speedMPerMin: 150 };
    expect(run(one).dose!.value).toBeCloseTo(22.2222, 4);
    expect(run({ ...one, sides: 2 }).dose!.value).toBeCloseTo(11.1111, 4);
  });

  // Surf. Coat. Technol. 234 (2013) 67 gives the doses in kJ/m² (read); the conversion 1 W·min/m² = 0.06 kJ/m² is exact.
  it.each([[255, 15.3], [636.6667, 38.2], [1273.3333, 76.4]])('%s W·min/m² is %s kJ/m²', (doseWMinPerM2, energy) => {
    expect(run({ doseWMinPerM2, widthMm: 1000, speedMPerMin: 10 }).energy!.value).toBeCloseTo(energy, 4);
  });
});
