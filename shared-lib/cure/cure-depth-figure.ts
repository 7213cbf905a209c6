import type { ResultValue } from '../calculation/result.ts';
import type { Figure, Series } from '../figure/figure.ts';
import { formatWithInterval } from '../quantity/format.ts';
import type { WorkingCurve } from './working-curve.ts';

interface Measured {
  readings: readonly { doseMJPerCm2: number; curedUm: number }[];
  drawdownUm?: number | undefined;
  filmUm: number;
}

/** Cured depth against the logarithm of the dose, with the line and the thickness of the printed film. */
export function cureDepthFigure({ readings, drawdownUm, filmUm }: Measured, curve: WorkingCurve | null, doseThrough: ResultValue): Figure {
  const doses = readings.map(({ doseMJPerCm2 }) => doseMJPerCm2);
  const ends = [Math.min(...doses), Math.max(...doses)];
  const line: Series[] = curve === null ? [] : [{ name: 'line', kind: 'line', role: 'fit', points: ends.map((x) => ({ x, y: curve.depthAt(x) })) }];
  return {
    id: 'depth-of-cure',
    title: 'Cured depth against dose',
    finding: doseThrough.value === null ? `Cured depth of ${readings.length} readings; the printed film is ${filmUm} µm thick.` : `The printed film of ${filmUm} µm cures through at ${formatWithInterval(doseThrough)}.`,
    x: { title: 'Dose', unit: 'mJ/cm²', scale: 'log' },
    y: { title: 'Cured depth', unit: 'µm', scale: 'linear', min: 0 },
    series: [
      { name: 'readings', kind: 'points', role: 'reading', points: readings.map(({ doseMJPerCm2, curedUm }) => ({ x: doseMJPerCm2, y: curedUm, ...(drawdownUm !== undefined && curedUm >= drawdownUm && { open: 'up' as const }) })) },
      ...line,
    ],
    lines: [{ name: 'printed film', axis: 'y', value: filmUm, role: 'mark' }],
  };
}
