import type { TraceColumns } from '../../shared-lib/bond-strength/trace-columns.ts';
import { seededRandom } from '../../shared-lib/statistics/random.ts';

/** A peel trace of so many points over 200 mm: run-in, initial peak, a wavering plateau with noise that remembers, coming apart. */
export function longTrace(points: number): TraceColumns {
  const random = seededRandom(12);
  const displacementMm = Float64Array.from({ length: points }, (_, index) => (200 * index) / points);
  let wander = 0;
  const forceN = displacementMm.map((at) => {
    wander = 0.98 * wander + 0.004 * random.normal();
    const shape = at < 4 ? at / 4 : at < 10 ? 1.3 - 0.05 * (at - 4) : Math.min(1, (200 - at) / 2);
    return 3 * shape * (1 + 0.03 * Math.sin(at) + wander) + 0.004 * random.normal();
  });
  return { displacementMm, forceN };
}
