import { slopeThroughOrigin, type FadeModel } from './fade-model.ts';

/** Models of the colour difference ΔE from the unexposed print, 0 before exposure. */
export const growthModels: readonly FadeModel[] = [
  {
    id: 'linear-growth',
    title: 'linear growth',
    formula: 'rate · exposure',
    parameters: [{ name: 'rate', dimension: 'per-exposure' }],
    at: (exposure, [rate]) => rate! * exposure,
    start: (x, y) => [slopeThroughOrigin(x, y)],
    exposureAt: (limit, [rate]) => (rate! > 0 ? limit / rate! : Infinity),
  },
  {
    id: 'growth-to-plateau',
    title: 'growth to a plateau',
    formula: 'plateau · (1 − e^(−rate · exposure))',
    parameters: [
      { name: 'plateau', dimension: 'none' },
      { name: 'rate', dimension: 'per-exposure' },
    ],
    at: (exposure, [plateau, rate]) => -plateau! * Math.expm1(-rate! * exposure),
    start: plateauStart,
    exposureAt: (limit, [plateau, rate]) => (rate! > 0 && plateau! > limit ? -Math.log1p(-limit / plateau!) / rate! : Infinity),
    bounds: (farthest) => ({ lower: [0, 1e-4 / farthest], upper: [Infinity, Infinity] }),
  },
];

/** The best of a ladder of rates, each with the plateau that suits it: the fit then only has to refine. */
function plateauStart(x: readonly number[], y: readonly number[]): number[] {
  const farthest = Math.max(...x);
  const candidates = Array.from({ length: 25 }, (_, step) => {
    const rate = (0.05 * 1.4 ** step) / farthest;
    const growth = x.map((at) => -Math.expm1(-rate * at));
    const plateau = slopeThroughOrigin(growth, y);
    const misfit = growth.reduce((sum, part, index) => sum + (y[index]! - plateau * part) ** 2, 0);
    return { plateau, rate, misfit };
  });
  const best = candidates.reduce((a, b) => (b.misfit < a.misfit ? b : a));
  return [best.plateau, best.rate];
}
