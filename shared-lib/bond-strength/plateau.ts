import { InputError } from '../calculation/input-error.ts';
import { median } from '../statistics/quantile.ts';
import type { TraceColumns } from './trace-columns.ts';

/** Part of a trace, as point indices (`end` not included). */
export interface Range {
  start: number;
  end: number;
}

/** Where the specimen carries load, and the steady part of it that is averaged. */
export interface Plateau {
  loaded: Range;
  steady: Range;
  /** Typical force under load (N), by which a loss of force is judged. */
  levelN: number;
  /** `detected`: proposed from the force; `given`: set by the person. */
  origin: 'detected' | 'given';
}

/** How a person may set the plateau. Either pair, not both; a side left out reaches to that end of the trace. */
export interface PlateauChoice {
  discardStartMm?: number | undefined;
  discardEndMm?: number | undefined;
  fromMm?: number | undefined;
  toMm?: number | undefined;
}

/** The trace is looked at in this many slices of equal travel, so that noise and single peaks do not decide. */
const SLICES = 200;
/** Shares of the typical force: below the first a slice carries no load; above the second it is the initial peak. */
const LOADED_SHARE = 0.5;
const INITIAL_PEAK_SHARE = 1.15;
/** The central 80 % of the travel under load is averaged, as in ASTM F88 for the average of a seal. */
const CUT_EACH_END = 0.1;

/**
 * The plateau of a peel trace. Unless `choice` sets it, it is proposed: the central 80 % of the travel under load, begun
 * later where an initial peak lasts longer. One pass over the points.
 * @throws InputError when the choice names both ways, is reversed, or leaves fewer than two points.
 */
export function findPlateau(trace: TraceColumns, choice: PlateauChoice = {}): Plateau {
  const { levelN, slices } = slicedForce(trace);
  const proposed = propose(trace, slices, levelN);
  const given = givenRange(trace.displacementMm, choice);
  return given ? { loaded: given, steady: given, levelN, origin: 'given' } : { ...proposed, levelN, origin: 'detected' };
}

/** The range of points whose displacement lies in `[fromMm, toMm]`. */
export function rangeWithin(displacementMm: Float64Array, fromMm: number, toMm: number): Range {
  return { start: firstAtLeast(displacementMm, fromMm), end: firstAbove(displacementMm, toMm) };
}

/** The central 80 % by travel of a range: what ISO 6133 methods B to E look at. */
export function centralPart(displacementMm: Float64Array, range: Range): Range {
  const from = displacementMm[range.start]!;
  const to = displacementMm[range.end - 1]!;
  const cut = CUT_EACH_END * (to - from);
  return rangeWithin(displacementMm, from + cut, to - cut);
}

function givenRange(displacementMm: Float64Array, choice: PlateauChoice): Range | null {
  const { discardStartMm, discardEndMm, fromMm, toMm } = choice;
  const byDiscard = discardStartMm !== undefined || discardEndMm !== undefined;
  const byEnds = fromMm !== undefined || toMm !== undefined;
  if (!byDiscard && !byEnds) return null;
  const first = displacementMm[0]!;
  const last = displacementMm[displacementMm.length - 1]!;
  if (byDiscard && byEnds) {
    const field = fromMm !== undefined ? 'fromMm' : 'toMm';
    throw new InputError(field, choice[field], 'Set the plateau either by what is discarded or by where it runs from and to, not by both.');
  }
  const from = byEnds ? (fromMm ?? first) : first + (discardStartMm ?? 0);
  const to = byEnds ? (toMm ?? last) : last - (discardEndMm ?? 0);
  const field = byEnds ? (toMm !== undefined ? 'toMm' : 'fromMm') : discardStartMm !== undefined ? 'discardStartMm' : 'discardEndMm';
  if (from >= to) {
    throw new InputError(field, choice[field], `The plateau would run from ${from} to ${to} mm; it must begin before it ends. The trace runs from ${first} to ${last} mm.`);
  }
  const range = rangeWithin(displacementMm, from, to);
  if (!hasSpread(range)) {
    throw new InputError(field, choice[field], `Between ${from} and ${to} mm lie fewer than 2 points; the trace runs from ${first} to ${last} mm.`);
  }
  return range;
}

/** A slice of equal travel and the mean force (N) of its points. */
interface Slice extends Range {
  mean: number;
}

/** Mean force per slice of travel, and the median of those slices that carry load. */
function slicedForce({ displacementMm, forceN }: TraceColumns): { levelN: number; slices: Slice[] } {
  const count = forceN.length;
  const first = displacementMm[0]!;
  const width = (displacementMm[count - 1]! - first) / Math.min(SLICES, count);
  const slices: Slice[] = [];
  for (let start = 0; start < count; ) {
    const until = first + width * (Math.floor((displacementMm[start]! - first) / width) + 1);
    let sum = 0;
    let end = start;
    do sum += forceN[end++]!;
    while (end < count && displacementMm[end]! < until);
    slices.push({ start, end, mean: sum / (end - start) });
    start = end;
  }
  const sorted = Float64Array.from(slices, (slice) => slice.mean).sort();
  const high = sorted[Math.ceil(0.9 * sorted.length) - 1]!;
  const active = sorted.filter((mean) => mean >= 0.3 * high);
  return { levelN: high > 0 ? median(active) : 0, slices };
}

function propose({ displacementMm }: TraceColumns, slices: Slice[], levelN: number): { loaded: Range; steady: Range } {
  const whole: Range = { start: 0, end: displacementMm.length };
  if (levelN <= 0) return { loaded: whole, steady: whole };
  const isLoaded = (slice: Slice) => slice.mean >= LOADED_SHARE * levelN;
  const run = { start: slices.find(isLoaded)!.start, end: slices.findLast(isLoaded)!.end };
  const loaded = hasSpread(run) ? run : whole;
  const central = centralPart(displacementMm, loaded);
  const steady = { start: Math.max(central.start, afterInitialPeak(slices, levelN, loaded)), end: central.end };
  return { loaded, steady: hasSpread(steady) ? steady : loaded };
}

/** At least the two points that a standard deviation needs. */
function hasSpread(range: Range): boolean {
  return range.end - range.start >= 2;
}

/** First point after the initial peak: where a force well above the typical one at the start of loading has come down again. */
function afterInitialPeak(slices: Slice[], levelN: number, loaded: Range): number {
  const firstThird = loaded.start + (loaded.end - loaded.start) / 3;
  let after = loaded.start;
  for (const slice of slices) {
    if (slice.start >= firstThird) break;
    if (slice.mean > INITIAL_PEAK_SHARE * levelN) after = slice.end;
    else if (after > loaded.start) break;
  }
  return after;
}

function firstAtLeast(sorted: Float64Array, value: number): number {
  return lowerBound(sorted, (at) => at >= value);
}

function firstAbove(sorted: Float64Array, value: number): number {
  return lowerBound(sorted, (at) => at > value);
}

function lowerBound(sorted: Float64Array, reached: (at: number) => boolean): number {
  let low = 0;
  let high = sorted.length;
  while (low < high) {
    const middle = (low + high) >>> 1;
    if (reached(sorted[middle]!)) high = middle;
    else low = middle + 1;
  }
  return low;
}
