import type { Flag } from '../calculation/result.ts';
import { peakMedian, type PeakMethod, type PeakResult } from './iso-6133.ts';
import { plateauForce, type PlateauForce } from './plateau-statistics.ts';
import { findPlateau, type Plateau, type PlateauChoice } from './plateau.ts';
import type { TraceColumns } from './trace-columns.ts';
import { traceFlags } from './trace-flags.ts';

export interface TraceAnalysis {
  /** The trace after the tare. */
  trace: TraceColumns;
  plateau: Plateau;
  fromMm: number;
  toMm: number;
  force: PlateauForce;
  /** What a peak must fall by to count, N. */
  peakFallN: number;
  peaks: PeakResult | null;
  flags: Flag[];
}

export interface TraceOptions extends PlateauChoice {
  /** Force that the load cell shows without a specimen; taken off every point. */
  tareN?: number | undefined;
  peaks?: PeakMethod | undefined;
}

/** A peak must fall by a tenth of the plateau's range, and by 1 % of its mean, to be told from noise (common practice). */
const PEAK_SHARE_OF_RANGE = 0.1;
const PEAK_SHARE_OF_MEAN = 0.01;

/**
 * Everything that one peel trace yields in force: plateau, statistics over it, peaks on request, doubts.
 * @param trace already checked by `checkTrace`.
 * @param level confidence level of the mean's interval.
 * @throws InputError when the plateau cannot be set as chosen or a peak method finds no peak.
 */
export function analyseTrace(trace: TraceColumns, options: TraceOptions, level: number): TraceAnalysis {
  const tareN = options.tareN ?? 0;
  const tared = tareN === 0 ? trace : { displacementMm: trace.displacementMm, forceN: trace.forceN.map((force) => force - tareN) };
  const plateau = findPlateau(tared, options);
  const force = plateauForce(tared, plateau.steady, level);
  const range = force.maximum - force.minimum;
  const peakFallN = Math.max(PEAK_SHARE_OF_RANGE * range, PEAK_SHARE_OF_MEAN * Math.abs(force.mean), Number.EPSILON);
  const peaks = options.peaks ? peakMedian(tared, plateau, options.peaks, peakFallN) : null;
  return {
    trace: tared,
    plateau,
    fromMm: tared.displacementMm[plateau.steady.start]!,
    toMm: tared.displacementMm[plateau.steady.end - 1]!,
    force,
    peakFallN,
    peaks,
    flags: [...traceFlags(tared, plateau, force), ...(peaks?.flags ?? [])],
  };
}
