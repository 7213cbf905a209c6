import type { ResultValue, TitledTable } from '../calculation/result.ts';
import { differenceFormulas, type Tolerance } from './difference-formulas.ts';
import { chroma, hueDeg, type Lab } from './lab.ts';
import type { Xyz } from './xyz.ts';

/** What a print was held against, and what came out: the results of `colour-difference`, or why there are none. */
export interface Compared {
  name: string;
  results: Record<string, ResultValue> | null;
  problem: string;
}

/** One line for each that the print was held against; only the reference decides. */
export function comparisonTable(reference: Compared, others: readonly Compared[], tolerance: Tolerance | undefined): TitledTable {
  const formula = tolerance?.on ?? 'deltaE00';
  const { title } = differenceFormulas[formula];
  const row = ({ name, results, problem }: Compared, decides: string) => ({
    against: name,
    difference: results?.[formula]?.value ?? null,
    ...(formula === 'deltaE00' ? {} : { deltaE00: results?.deltaE00?.value ?? null }),
    words: results ? (results.direction?.text ?? '') : `not compared: ${shortened(problem)}`,
    decides,
  });
  return {
    title: 'This print against',
    columns: [
      { key: 'against', title: 'Against' },
      { key: 'difference', title, decimals: 2 },
      ...(formula === 'deltaE00' ? [] : [{ key: 'deltaE00', title: 'ΔE00', decimals: 2 }]),
      { key: 'words', title: 'This print is' },
      { key: 'decides', title: 'What it is for' },
    ],
    rows: [row(reference, tolerance ? `decides: ${title} at most ${tolerance.limit}` : 'would decide; no limit is set'), ...others.map((other) => row(other, 'to know, decides nothing'))],
  };
}

/** The first sentence says what differs; what to do stands in the notes. */
function shortened(problem: string): string {
  return problem.split(': ')[0]!;
}

/** L*, a*, b*, C*, h and, from spectra, X, Y, Z of each colour under one light. */
export function coloursTable(colours: readonly { name: string; lab: Lab; xyz: Xyz | null }[], light: string | undefined): TitledTable {
  const spectral = colours.some(({ xyz }) => xyz !== null);
  return {
    title: light ? `Colours under ${light}` : 'Colours',
    columns: [
      { key: 'colour', title: 'Colour' },
      ...['L', 'a', 'b', 'C'].map((key) => ({ key, title: `${key}*`, decimals: 2 })),
      { key: 'h', title: 'h', unit: '°', decimals: 1 },
      ...(spectral ? ['X', 'Y', 'Z'].map((key) => ({ key, title: key, decimals: 2 })) : []),
    ],
    rows: colours.map(({ name, lab: [L, a, b], xyz }) => ({ colour: name, L, a, b, C: chroma(a, b), h: hueDeg(a, b), ...(spectral ? { X: xyz?.[0] ?? null, Y: xyz?.[1] ?? null, Z: xyz?.[2] ?? null } : {}) })),
  };
}
