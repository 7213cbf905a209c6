import { findPeaks } from '../bond-strength/find-peaks.ts';
import { rangeWithin } from '../bond-strength/plateau.ts';
import type { TraceColumns } from '../bond-strength/trace-columns.ts';

/** Forces of one sled pull, N. */
export interface SledForces {
  /** Force at the first peak; `null` where the force never falls back after rising. */
  staticN: number | null;
  kineticN: number;
  /** Travel over which the kinetic force is the mean, mm. */
  fromMm: number;
  toMm: number;
  /** The sled stuck and slipped: it came nearly to rest again and again. */
  stickSlip: boolean;
}

/** A first peak is one from which the force falls by 2 % of the highest; stick-slip falls by a quarter (common practice). */
const FIRST_PEAK_FALL = 0.02;
const STICK_SLIP_FALL = 0.25;

/**
 * Static force at the first peak and mean kinetic force over the travel after it.
 * @param travelMm how far after the peak the mean goes; without it, to the end of the trace.
 * Source: ASTM D1894, ISO 8295 (mean over the first 60 mm after the peak), as summarised publicly.
 */
export function sledForces(trace: TraceColumns, travelMm: number | undefined): SledForces {
  const { displacementMm, forceN } = trace;
  const last = forceN.length - 1;
  const whole = { start: 0, end: forceN.length };
  const highest = forceN.reduce((most, force) => Math.max(most, force), -Infinity);
  // Ripples on the way up are no static peak: the sled does not slide yet.
  const peak = findPeaks(forceN, whole, Math.max(FIRST_PEAK_FALL * highest, Number.EPSILON)).find((index) => forceN[index]! >= highest / 2);
  // Without a peak sliding begins where the force has come to nine tenths of its highest.
  const start = peak ?? forceN.findIndex((force) => force >= 0.9 * highest);
  const fromMm = displacementMm[start]!;
  const range = rangeWithin(displacementMm, fromMm, travelMm === undefined ? displacementMm[last]! : fromMm + travelMm);
  // The peak itself is rest, not sliding.
  const sliding = forceN.subarray(Math.min(range.start + 1, last), Math.max(range.end, range.start + 2));
  const kineticN = sliding.reduce((sum, force) => sum + force, 0) / sliding.length;
  const slips = findPeaks(forceN, { start, end: range.end }, Math.max(STICK_SLIP_FALL * kineticN, Number.EPSILON));
  return {
    staticN: peak === undefined ? null : forceN[peak]!,
    kineticN,
    fromMm,
    toMm: displacementMm[Math.min(range.end - 1, last)]!,
    stickSlip: slips.length >= 3,
  };
}
