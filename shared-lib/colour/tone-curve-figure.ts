import type { Figure } from '../figure/figure.ts';

/** A patch of the tone curve: its nominal value and the mean of what was measured, both in percent. */
export interface TonePoint {
  nominalPct: number;
  toneValuePct: number;
}

/** Measured over nominal tone value, from paper to solid, beside the line of no gain. */
export function toneCurveFigure(points: readonly TonePoint[], finding: string): Figure {
  const curve = [...points].sort((one, other) => one.nominalPct - other.nominalPct);
  const ends = [{ x: 0, y: 0 }, { x: 100, y: 100 }];
  const measured = curve.map(({ nominalPct, toneValuePct }) => ({ x: nominalPct, y: toneValuePct }));
  const last = measured.at(-1);
  return {
    id: 'tone-curve',
    title: 'Tone curve',
    finding,
    x: { title: 'Nominal', unit: '%', scale: 'linear', min: 0, max: 100 },
    y: { title: 'Tone value', unit: '%', scale: 'linear', min: 0, max: Math.max(100, ...measured.map(({ y }) => y)) },
    series: [
      { name: 'no gain', kind: 'line', role: 'reference', points: ends },
      { name: 'tone curve', kind: 'line', role: 'fit', points: [ends[0]!, ...measured, ...(last?.x === 100 ? [] : [ends[1]!])] },
      { name: 'patches', kind: 'points', role: 'reading', points: measured },
    ],
  };
}
