import { studentTQuantile } from '../statistics/distributions.ts';
import { median } from '../statistics/quantile.ts';
import type { Range } from './plateau.ts';
import type { TraceColumns } from './trace-columns.ts';

/** The force over the plateau of one trace, N. */
export interface PlateauForce {
  n: number;
  mean: number;
  /** Interval of the mean at `level`; `null` below twenty points. */
  low: number | null;
  high: number | null;
  median: number;
  minimum: number;
  maximum: number;
  /** Of the points, n − 1. */
  standardDeviation: number;
  /** Mean over the travel (trapezia), which differs from `mean` where points are spaced unevenly. */
  meanOverTravel: number;
  /** Change of the force along the plateau (N) by a straight line through the block means, and its |t|; `null` below twenty points. */
  drift: { changeN: number; t: number } | null;
}

/**
 * B. Schmeiser, Oper. Res. 30 (1982) 556: 10 to 30 blocks are enough. The fewest of these make the longest blocks, whose
 * means depend least on one another: with 20 the interval was too short for traces whose points remember each other long.
 */
const BLOCKS = 10;
const FEWEST_POINTS = 20;

/**
 * Force statistics over the plateau. Neighbouring points of a trace depend on each other, so the interval of the mean
 * comes from the scatter of block means (non-overlapping batch means, Student's t with blocks − 1 degrees of freedom),
 * never from s/√n of the points.
 */
export function plateauForce({ displacementMm, forceN }: TraceColumns, { start, end }: Range, level: number): PlateauForce {
  const force = forceN.subarray(start, end);
  const n = force.length;
  const { minimum, maximum, sum, areaNMm } = sums(force, displacementMm.subarray(start, end));
  // Rounding in the sum must not put the mean outside the readings (a plateau without any spread).
  const mean = Math.min(maximum, Math.max(minimum, sum / n));
  const blocks = blockMeans(force, mean);
  return {
    n,
    mean,
    ...meanInterval(blocks, mean, level),
    median: median(force),
    minimum,
    maximum,
    standardDeviation: Math.sqrt(squaresAbout(force, mean) / (n - 1)),
    meanOverTravel: areaNMm / (displacementMm[end - 1]! - displacementMm[start]!),
    drift: blocks && driftOf(blocks),
  };
}

interface Sums {
  minimum: number;
  maximum: number;
  sum: number;
  /** Under the force by trapezia. */
  areaNMm: number;
}

/** A long trace is read while somebody waits: one pass, with the point before carried along instead of read again. */
function sums(force: Float64Array, displacementMm: Float64Array): Sums {
  let before = force[0]!;
  let beforeMm = displacementMm[0]!;
  let minimum = before;
  let maximum = before;
  let sum = before;
  let doubleArea = 0;
  for (let index = 1; index < force.length; index += 1) {
    const value = force[index]!;
    const atMm = displacementMm[index]!;
    if (value < minimum) minimum = value;
    if (value > maximum) maximum = value;
    sum += value;
    doubleArea += (value + before) * (atMm - beforeMm);
    before = value;
    beforeMm = atMm;
  }
  return { minimum, maximum, sum, areaNMm: doubleArea / 2 };
}

function squaresAbout(force: Float64Array, mean: number): number {
  let squares = 0;
  // eslint-disable-next-line @typescript-eslint/prefer-for-of -- for-of puts every number of a typed array on the heap
  for (let index = 0; index < force.length; index += 1) squares += (force[index]! - mean) ** 2;
  return squares;
}

/** Means of equal blocks, as deviations from the overall mean so that a plateau without spread gives exact zeros. */
function blockMeans(force: Float64Array, mean: number): Float64Array | null {
  if (force.length < FEWEST_POINTS) return null;
  const boundary = (block: number) => Math.floor((block * force.length) / BLOCKS);
  return Float64Array.from({ length: BLOCKS }, (_, block) => meanDeviation(force, boundary(block), boundary(block + 1), mean));
}

function meanDeviation(force: Float64Array, from: number, to: number, mean: number): number {
  let sum = 0;
  for (let index = from; index < to; index += 1) sum += force[index]! - mean;
  return sum / (to - from);
}

function meanInterval(blocks: Float64Array | null, mean: number, level: number): { low: number | null; high: number | null } {
  if (!blocks) return { low: null, high: null };
  const count = blocks.length;
  const squares = blocks.reduce((sum, deviation) => sum + deviation ** 2, 0);
  const half = studentTQuantile(1 - (1 - level) / 2, count - 1) * Math.sqrt(squares / (count - 1) / count);
  return { low: mean - half, high: mean + half };
}

function driftOf(blocks: Float64Array): { changeN: number; t: number } {
  const middle = (blocks.length - 1) / 2;
  let sxx = 0;
  let sxy = 0;
  let syy = 0;
  blocks.forEach((deviation, index) => {
    sxx += (index - middle) ** 2;
    sxy += (index - middle) * deviation;
    syy += deviation ** 2;
  });
  const slope = sxy / sxx;
  const residual = Math.max(0, syy - slope * sxy);
  const standardError = Math.sqrt(residual / (blocks.length - 2) / sxx);
  return { changeN: slope * blocks.length, t: standardError > 0 ? Math.abs(slope) / standardError : slope === 0 ? 0 : Number.MAX_VALUE };
}
