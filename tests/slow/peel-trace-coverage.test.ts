import { describe, it } from 'vitest';
import { plateauForce } from '../../shared-lib/bond-strength/plateau-statistics.ts';
import { seededRandom } from '../../shared-lib/statistics/random.ts';
import { Coverage } from './simulate.ts';

const RUNS = 3000;

/** Noise of which each point keeps a share of the one before: the more it keeps, the longer a trace must be. */
describe('the mean force over a plateau', () => {
  it.each([
    { points: 400, kept: 0 },
    { points: 400, kept: 0.5 },
    { points: 400, kept: 0.8 },
    { points: 1000, kept: 0.9 },
    { points: 4000, kept: 0.95 },
    { points: 60, kept: 0.3 },
  ])('of $points points that keep $kept of their neighbour', ({ points, kept }) => {
    const coverage = new Coverage(`peel-trace, ${points} points, kept ${kept}`);
    const random = seededRandom(33);
    const displacementMm = Float64Array.from({ length: points }, (_, index) => index * 0.2);
    for (let run = 0; run < RUNS; run++) {
      let noise = random.normal() / Math.sqrt(1 - kept * kept);
      const forceN = displacementMm.map(() => 3 + 0.05 * (noise = kept * noise + random.normal()));
      const { mean, low, high } = plateauForce({ displacementMm, forceN }, { start: 0, end: points }, 0.95);
      coverage.add({ value: mean, unit: 'N', low, high, level: 0.95, n: points, bound: 'exact' }, 3);
    }
    coverage.judge();
  });
});
