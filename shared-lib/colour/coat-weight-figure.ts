import type { Figure } from '../figure/figure.ts';
import { curveBand } from '../statistics/curve-fit.ts';
import type { CoatWeightFit } from './fit-coat-weight.ts';

/** The lab's drawdowns with the fitted curve, its interval, and where present and target reading cross it. */
export function coatWeightFigure(
  { model, fit }: CoatWeightFit,
  drawdowns: readonly { coatWeightGM2: number; reading: number }[],
  marks: { present: number; target: number },
  quantity: string,
  level: number,
  finding: string,
): Figure {
  const weights = drawdowns.map(({ coatWeightGM2 }) => coatWeightGM2);
  const [from, to] = [Math.min(...weights, marks.present, marks.target), Math.max(...weights, marks.present, marks.target)];
  const grid = Array.from({ length: 61 }, (_, index) => from + ((to - from) * index) / 60);
  const band = grid.map((x) => ({ x, ...curveBand(fit, model.value, x, level) }));
  return {
    id: 'coat-weight',
    title: `${quantity} over coat weight`,
    finding,
    x: { title: 'Coat weight', unit: 'g/m²', scale: 'linear' },
    y: { title: quantity, scale: 'linear' },
    series: [
      { name: 'drawdowns', kind: 'points', role: 'reading', points: drawdowns.map(({ coatWeightGM2, reading }) => ({ x: coatWeightGM2, y: reading })) },
      { name: 'fit', kind: 'line', role: 'fit', points: band.map(({ x, value }) => ({ x, y: value })) },
    ],
    bands: [
      {
        name: `${Number((100 * level).toPrecision(6))} % interval`,
        points: band.flatMap(({ x, low, high }) => (low === null || high === null ? [] : [{ x, low, high }])),
      },
    ],
    lines: [
      { name: 'present', axis: 'x', value: marks.present, role: 'mark' },
      { name: 'target', axis: 'x', value: marks.target, role: 'limit' },
    ],
  };
}
