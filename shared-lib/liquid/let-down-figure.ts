import type { Figure } from '../figure/figure.ts';
import { formatPlain } from '../quantity/format.ts';
import { predictLinear } from '../statistics/linear-regression.ts';
import { thinningLine, type LetDown } from './let-down.ts';

const CURVE_POINTS = 41;

/** Trial additions with the fitted line, on a logarithmic scale on which it is straight, and the target. */
export function letDownFigure(additions: readonly { pct: number; mm2S: number }[], targetMm2S: number, { pct }: LetDown): Figure {
  const fit = thinningLine(additions);
  const shares = additions.map((addition) => addition.pct);
  const [from, to] = [Math.min(...shares), Math.max(...shares)];
  const grid = Array.from({ length: CURVE_POINTS }, (_, index) => from + ((to - from) * index) / (CURVE_POINTS - 1));
  return {
    id: 'let-down',
    title: 'Viscosity against diluent',
    finding: `The line comes to ${formatPlain(targetMm2S)} mm²/s at ${formatPlain(pct)} % diluent.`,
    x: { title: 'Diluent in the mixture', unit: '%', scale: 'linear' },
    y: { title: 'Viscosity', unit: 'mm²/s', scale: 'log' },
    series: [
      { name: 'trial additions', kind: 'points', role: 'reading', points: additions.map((addition) => ({ x: addition.pct, y: addition.mm2S })) },
      { name: 'line', kind: 'line', role: 'fit', points: grid.map((x) => ({ x, y: Math.exp(predictLinear(fit, [x]).value) })) },
    ],
    lines: [
      { name: 'target', axis: 'y', value: targetMm2S, role: 'limit' },
      { name: 'diluent to add', axis: 'x', value: pct, role: 'mark' },
    ],
  };
}
