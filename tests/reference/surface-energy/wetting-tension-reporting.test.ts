import { describe, expect, it } from 'vitest';
import { runCalculation } from '../../../shared-lib/calculation/calculation.ts';
import { reportedWettingTension } from '../../../shared-lib/surface-energy/reported-wetting-tension.ts';
import { wettingFluidCalculation } from '../../../shared-lib/surface-energy/wetting-fluid.calculation.ts';
import { fluidTable } from '../../../shared-lib/surface-energy/fluid-table.ts';

describe('ASTM D2578-09 §12.1 and §12.2 (read in public text)', () => {
  it.each<[number[], number | null, string]>([
    [[38, 38, 39], 38.5, 'mean 38.33, range 1 is not above 1'],
    [[38, 38, 40], null, 'range 2: the single values are reported'],
    [[37.5, 38], 38, '37.75 is a tie; ours goes up (the standard leaves it open)'],
    [[38, 38, 38], 38, 'no rounding'],
  ])('%j → %s (%s)', (held, expected) => {
    expect(reportedWettingTension(held)).toBe(expected);
  });

  it('§11.4 and ISO 8296: a film that stays whole for 2.0 s holds', () => {
    const readings = [{ fluidMNm: 38, heldS: 2.0 }, { fluidMNm: 40, heldS: 1.99 }];
    expect(runCalculation(wettingFluidCalculation, { positions: [{ label: '1', readings }] }).table[0]).toMatchObject({
      wetsMNm: 38,
      retractsMNm: 40,
    });
  });
});

describe('ASTM D2578 Table 1 (from memory, single source)', () => {
  it.each([
    [30, 0], [31, 2.5], [34, 26.5], [36, 42.5], [38, 54.0], [40, 63.5], [42, 71.5], [44, 78.0], [46, 83.0], [50, 90.7], [56, 99.0],
  ])('%s mN/m: %s % formamide', (tension, pct) => {
    expect(fluidTable.find((fluid) => fluid.tensionMNm === tension)?.formamidePct).toBe(pct);
  });
});
