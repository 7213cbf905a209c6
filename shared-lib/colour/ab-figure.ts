import type { Figure } from '../figure/figure.ts';
import type { CmcWeights } from './delta-e-cmc.ts';
import { differenceFormulas, type Tolerance } from './difference-formulas.ts';
import type { Lab } from './lab.ts';
import { toleranceContour } from './tolerance-contour.ts';

/** Where samples lie around their reference in the a*b* plane, with the tolerance as a closed line. Both axes span the same. */
export function abFigure(reference: Lab, samples: readonly Lab[], finding: string, tolerance: Tolerance | undefined, cmc: CmcWeights): Figure {
  const contour = tolerance ? toleranceContour(reference, tolerance, cmc) : [];
  const points = [...samples.map(([, a, b]) => ({ a, b })), ...contour, { a: reference[1], b: reference[2] }];
  const range = (values: number[]) => ({ low: Math.min(...values), high: Math.max(...values) });
  const across = range(points.map(({ a }) => a));
  const along = range(points.map(({ b }) => b));
  const half = Math.max(across.high - across.low, along.high - along.low, 1) * 0.55;
  const axis = (title: string, { low, high }: { low: number; high: number }) => ({ title, scale: 'linear' as const, min: (low + high) / 2 - half, max: (low + high) / 2 + half });
  return {
    id: 'a-b',
    title: 'Place in the a*b* plane',
    finding,
    x: axis('a*', across),
    y: axis('b*', along),
    series: [
      { name: 'sample', kind: 'points', role: 'reading', points: samples.map(([, a, b]) => ({ x: a, y: b })) },
      { name: 'reference', kind: 'points', role: 'reference', points: [{ x: reference[1], y: reference[2] }] },
      ...(tolerance
        ? [{ name: `${differenceFormulas[tolerance.on].title} ${tolerance.limit} at equal L*`, kind: 'line' as const, role: 'fit' as const, points: contour.map(({ a, b }) => ({ x: a, y: b })) }]
        : []),
    ],
  };
}
