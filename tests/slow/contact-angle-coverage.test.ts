import { describe, it } from 'vitest';
import { runCalculation } from '../../shared-lib/calculation/calculation.ts';
import { seededRandom } from '../../shared-lib/statistics/random.ts';
import { contactAngleCalculation } from '../../shared-lib/surface-energy/contact-angle.calculation.ts';
import { owensWendt } from '../../shared-lib/surface-energy/owens-wendt.ts';
import { findProbeLiquid } from '../../shared-lib/surface-energy/probe-liquids.ts';
import { Coverage } from './simulate.ts';

const DROPS = 5;
const RUNS = 800;
const DISPERSIVE = 36;
const POLAR = 8;

/** Owens–Wendt on drops that scatter by 1.5°, the same liquids as the truth was made with. */
describe('surface energy from contact angles', () => {
  it.each([
    { liquids: ['water', 'diiodomethane'] },
    { liquids: ['water', 'diiodomethane', 'formamide'] },
    { liquids: ['water', 'diiodomethane', 'formamide', 'ethylene glycol'] },
  ])('with $liquids.length liquids', ({ liquids }) => {
    const parts = ['total', 'dispersive', 'polar'] as const;
    const truth = { total: DISPERSIVE + POLAR, dispersive: DISPERSIVE, polar: POLAR };
    const coverages = parts.map((part) => new Coverage(`contact-angle, ${liquids.length} liquids, ${part}`));
    const model = owensWendt(liquids.map((name) => findProbeLiquid('strom', name)!));
    const random = seededRandom(35);
    for (let run = 0; run < RUNS; run++) {
      const given = liquids.map((name, index) => {
        const angle = (180 / Math.PI) * Math.acos(model.predict(Float64Array.of(truth.total, truth.dispersive, truth.polar), index));
        return { name, anglesDeg: Array.from({ length: DROPS }, () => angle + 1.5 * random.normal()) };
      });
      const { results } = runCalculation(contactAngleCalculation, { model: 'owens-wendt', liquidSet: 'strom', liquids: given });
      parts.forEach((part, index) => coverages[index]!.add(results[part]!, truth[part]));
    }
    for (const coverage of coverages) coverage.judge();
  });
});
