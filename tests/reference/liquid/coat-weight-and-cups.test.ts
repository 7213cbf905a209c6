import { describe, expect, it } from 'vitest';
import { runCalculation } from '../../../shared-lib/calculation/calculation.ts';
import { coatWeightCalculation } from '../../../shared-lib/liquid/coat-weight.calculation.ts';
import { viscosityCupCalculation } from '../../../shared-lib/liquid/viscosity-cup.calculation.ts';

const cup = (input: unknown) => runCalculation(viscosityCupCalculation, input).results;

describe('coat weight (mass balance)', () => {
  it('(0.6320 − 0.6140) g on 0.01 m² is 1.80 g/m², wet 6.0 at 30 % solids', () => {
    const { dry, wet } = runCalculation(coatWeightCalculation, { specimens: [{ areaM2: 0.01, coatedG: 0.632, bareG: 0.614 }], solidsPct: 30 }).results;
    expect(dry!.value).toBeCloseTo(1.8, 10);
    expect(wet!.value).toBeCloseTo(6.0, 10);
  });

  it('1.80 g/m² of 1.2 g/cm³ is 1.5 µm thick (g/m² ÷ g/cm³ = µm)', () => {
    const { thicknessUm } = runCalculation(coatWeightCalculation, { specimens: [{ areaM2: 0.01, coatedG: 0.632, bareG: 0.614 }], dryDensityGCm3: 1.2 }).results;
    expect(thicknessUm!.value).toBeCloseTo(1.5, 10);
  });
});

describe('flow cups', () => {
  it.each([
    // Formulas of ASTM D4212 (dip cups) and ASTM D1200 no. 1 and 2; of D1200 no. 3 to 5, ISO 2431 and DIN 53211 from memory.
    ['d4212-1', 50, 1.1 * (50 - 29)],
    ['d4212-2', 50, 3.5 * (50 - 14)],
    ['d4212-3', 50, 11.7 * (50 - 7.5)],
    ['d4212-4', 50, 14.8 * (50 - 5)],
    ['d4212-5', 50, 23 * 50],
    ['d1200-1', 60, 0.49 * (60 - 35)],
    ['d1200-2', 60, 1.44 * (60 - 18)],
    ['d1200-3', 60, 2.31 * (60 - 6.58)],
    ['d1200-4', 60, 3.85 * (60 - 4.49)],
    ['d1200-5', 60, 12.1 * (60 - 2)],
    ['iso2431-3', 50, 0.443 * 50 - 200 / 50],
    ['iso2431-4', 50, 1.37 * 50 - 200 / 50],
    ['iso2431-5', 50, 3.28 * 50 - 220 / 50],
    ['iso2431-6', 50, 6.9 * 50 - 570 / 50],
    ['din53211-4', 50, 4.57 * 50 - 452 / 50],
  ])('%s: %d s are %d mm²/s, and back', (id, seconds, mm2S) => {
    expect(cup({ cup: id, seconds }).kinematicMm2S!.value).toBeCloseTo(mm2S, 9);
    expect(cup({ cup: id, kinematicMm2S: mm2S }).seconds!.value).toBeCloseTo(seconds, 9);
  });

  it('η = ν·ρ: 100 mm²/s of 0.9 g/cm³ are 90 mPa·s', () => {
    expect(cup({ cup: 'd1200-4', kinematicMm2S: 100, densityGCm3: 0.9 }).dynamicMPaS!.value).toBeCloseTo(90, 10);
  });
});
