import { InputError } from '../calculation/input-error.ts';
import type { Flag } from '../calculation/result.ts';
import { findPeaks } from './find-peaks.ts';
import { centralPart, type Plateau } from './plateau.ts';
import { median } from '../statistics/quantile.ts';
import type { TraceColumns } from './trace-columns.ts';

export type PeakMethod = 'A' | 'B' | 'C' | 'D' | 'E';

/** The result by ISO 6133: the median of the chosen peaks, with their range. */
export interface PeakResult {
  medianN: number;
  rangeN: number;
  /** Indices of the chosen peaks; empty for method D, which reads the line and not peaks. */
  chosen: number[];
  /** All peaks found on the part of the trace that the method looks at. */
  found: number;
  flags: Flag[];
}

/** Number of peaks that a method is meant for; (M) from memory of ISO 6133:2015. */
const MEANT_FOR: Record<PeakMethod, { least: number; most: number; words: string }> = {
  A: { least: 1, most: 4, words: 'fewer than 5 peaks' },
  B: { least: 5, most: 20, words: '5 to 20 peaks' },
  C: { least: 21, most: Infinity, words: 'more than 20 peaks' },
  D: { least: 0, most: Infinity, words: 'near-continuous undulation' },
  E: { least: 21, most: Infinity, words: 'more than 20 peaks, found automatically' },
};

/** Method C: lines that divide the central part into ten equal lengths (M; nine or ten lines, not certain). */
const LINES = 9;

/**
 * Median and range of peak forces by ISO 6133:2015. That the result is the median with the range, that there are five
 * methods and that the number of peaks decides is the standard's published scope; the rules themselves are from memory of
 * it (M) and the standard, where at hand, wins:
 * A every peak of the loaded trace · B the peaks of the central 80 % · C of the central 80 % the peak nearest to each of
 * nine equally spaced lines · D the middle value of the central 80 % of the line itself · E every peak of the central
 * 80 %, found automatically. Where the number of peaks does not suit the method the result is flagged, not refused.
 * @param fallN what a peak must fall by to count, N.
 * @throws InputError (`peaks`) when the part looked at holds no peak.
 */
export function peakMedian(trace: TraceColumns, plateau: Plateau, method: PeakMethod, fallN: number): PeakResult {
  const central = centralPart(trace.displacementMm, plateau.loaded);
  const everywhere = findPeaks(trace.forceN, plateau.loaded, fallN);
  const inside = everywhere.filter((index) => index >= central.start && index < central.end);
  if (method === 'D') {
    const force = trace.forceN.subarray(central.start, central.end);
    return { medianN: median(force), rangeN: rangeOf(force), chosen: [], found: inside.length, flags: [] };
  }
  const found = method === 'A' ? everywhere : inside;
  if (found.length === 0) {
    throw new InputError('peaks', method, `Method ${method} of ISO 6133 needs peaks, and this trace has none that fall by ${fallN.toPrecision(2)} N or more; use the mean over the plateau.`);
  }
  const chosen = method === 'C' ? nearestToLines(trace.displacementMm, found, central) : found;
  const forces = Float64Array.from(chosen, (index) => trace.forceN[index]!);
  return { medianN: median(forces), rangeN: rangeOf(forces), chosen, found: found.length, flags: countFlags(method, everywhere.length) };
}

function nearestToLines(displacementMm: Float64Array, peaks: number[], central: { start: number; end: number }): number[] {
  const from = displacementMm[central.start]!;
  const length = displacementMm[central.end - 1]! - from;
  const chosen = new Set<number>();
  let candidate = 0;
  for (let line = 1; line <= LINES; line += 1) {
    const at = from + (length * line) / (LINES + 1);
    const away = (peak: number) => Math.abs(displacementMm[peaks[peak]!]! - at);
    while (candidate + 1 < peaks.length && away(candidate + 1) <= away(candidate)) candidate += 1;
    chosen.add(peaks[candidate]!);
  }
  return [...chosen];
}

function countFlags(method: PeakMethod, count: number): Flag[] {
  const { least, most, words } = MEANT_FOR[method];
  if (count >= least && count <= most) return [];
  const fitting = count < 5 ? 'A' : count <= 20 ? 'B' : 'C';
  const text = `Method ${method} of ISO 6133 is meant for ${words}; this trace has ${count}: method ${fitting} fits.`;
  return [{ code: 'peak-count', where: 'peaks', text }];
}

function rangeOf(values: Float64Array): number {
  let low = Infinity;
  let high = -Infinity;
  for (const value of values) {
    low = Math.min(low, value);
    high = Math.max(high, value);
  }
  return high - low;
}
