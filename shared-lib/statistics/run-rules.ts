import type { ChartPart } from './control-limits.ts';

export interface RunSignal {
  code: string;
  /** Place of the point that completes the pattern. */
  at: number;
  /** What is seen, for a sentence that begins with the point's name. */
  text: string;
}

interface Rule {
  code: string;
  text: string;
  /** Points the pattern spans. */
  span: number;
  /** Deviations in standard errors of the last `span` points. */
  holds: (z: readonly number[]) => boolean;
}

const oneSide = (z: readonly number[], beyond: number, least: number) =>
  [1, -1].some((side) => z.filter((value) => side * value > beyond).length >= least && side * z.at(-1)! > beyond);

const alternates = (z: readonly number[]) => z.every((value, i) => i < 2 || (value - z[i - 1]!) * (z[i - 1]! - z[i - 2]!) < 0);

const climbs = (z: readonly number[], side: 1 | -1) => z.every((value, i) => i === 0 || side * (value - z[i - 1]!) > 0);

const rules: Rule[] = [
  { code: 'beyond-limit', span: 1, text: 'lies beyond a control limit', holds: ([z]) => Math.abs(z!) > 3 },
  { code: 'two-of-three', span: 3, text: 'is the second of three in a row more than two thirds of the way to the same limit', holds: (z) => oneSide(z, 2, 2) },
  { code: 'four-of-five', span: 5, text: 'is the fourth of five in a row more than one third of the way to the same limit', holds: (z) => oneSide(z, 1, 4) },
  { code: 'one-side', span: 9, text: 'is the ninth in a row on one side of the centre', holds: (z) => oneSide(z, 0, 9) },
  { code: 'trend', span: 6, text: 'is the sixth in a row that goes the same way', holds: (z) => climbs(z, 1) || climbs(z, -1) },
  { code: 'alternating', span: 14, text: 'is the fourteenth in a row that goes up and down in turn', holds: alternates },
];

/**
 * Patterns that a process in control shows rarely (each about once in 200 to 400 points). A pattern is reported where it
 * is completed; as long as it goes on, not again.
 * Source: ISO 7870-2; L. S. Nelson, J. Qual. Technol. 16 (1984) 237.
 */
export function runSignals({ points, centre, upper }: ChartPart): RunSignal[] {
  const unit = (upper - centre) / 3;
  if (!(unit > 0)) return [];
  const z = points.map((point) => (point - centre) / unit);
  return rules.flatMap(({ code, text, span, holds }) => {
    const hits = z.map((_, at) => at + 1 >= span && holds(z.slice(at + 1 - span, at + 1)));
    return hits.flatMap((hit, at) => (hit && (span === 1 || !hits[at - 1]) ? [{ code, at, text }] : []));
  });
}
