import type { ResultValue } from '../calculation/result.ts';
import type { Figure } from '../figure/figure.ts';
import { formatWithInterval } from '../quantity/format.ts';
import type { FlowCup } from './flow-cups.ts';

const CURVE_POINTS = 41;

/** The runs on the curve of their cup; outside the lines its formula does not hold. */
export function flowTimesFigure(cup: FlowCup, times: readonly number[], kinematic: ResultValue): Figure {
  const [start, end] = [Math.min(cup.from, ...times), Math.max(cup.to, ...times)];
  const grid = Array.from({ length: CURVE_POINTS }, (_, index) => start + ((end - start) * index) / (CURVE_POINTS - 1));
  return {
    id: 'flow-times',
    title: `Flow time and viscosity, ${cup.label}`,
    finding: `Kinematic viscosity ${formatWithInterval(kinematic)}, n = ${times.length}.`,
    x: { title: 'Flow time', unit: 's', scale: 'linear' },
    y: { title: 'Viscosity', unit: 'mm²/s', scale: 'linear', min: 0 },
    series: [
      { name: 'runs', kind: 'points', role: 'reading', points: times.map((x) => ({ x, y: cup.viscosity(x) })) },
      { name: `formula of ${cup.standard}`, kind: 'line', role: 'reference', points: grid.map((x) => ({ x, y: Math.max(0, cup.viscosity(x)) })) },
    ],
    lines: [
      { name: 'shortest time', axis: 'x', value: cup.from, role: 'mark' },
      { name: 'longest time', axis: 'x', value: cup.to, role: 'mark' },
    ],
  };
}
