import { studentTQuantile } from '../statistics/distributions.ts';
import { median } from './select-median.ts';
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

/** From 200 points on 20 blocks, from 20 on 10; B. Schmeiser, Oper. Res. 30 (1982) 556: 10 to 30 blocks are enough. */
const BLOCKS = [
  { points: 200, blocks: 20 },
  { points: 20, blocks: 10 },
];

/**
 * Force statistics over the plateau. Neighbouring points of a trace depend on each other, so the interval of the mean
 * comes from the scatter of block means (non-overlapping batch means, Student's t with blocks − 1 degrees of freedom),
 * never from s/√n of the points.
 */
export function plateauForce({ displacementMm, forceN }: TraceColumns, { start, end }: Range, level: number): PlateauForce {
  const force = forceN.subarray(start, end);
  const n = force.length;
  let minimum = Infinity;
  let maximum = -Infinity;
  let sum = 0;
  let area = 0;
  for (let index = 0; index < n; index += 1) {
    const value = force[index]!;
    if (value < minimum) minimum = value;
    if (value > maximum) maximum = value;
    sum += value;
    if (index > 0) area += ((value + force[index - 1]!) / 2) * (displacementMm[start + index]! - displacementMm[start + index - 1]!);
  }
  // Rounding in the sum must not put the mean outside the readings (a plateau without any spread).
  const mean = Math.min(maximum, Math.max(minimum, sum / n));
  let squares = 0;
  for (const value of force) squares += (value - mean) ** 2;
  const blocks = blockMeans(force, mean);
  return {
    n,
    mean,
    ...meanInterval(blocks, mean, level),
    median: median(force),
    minimum,
    maximum,
    standardDeviation: Math.sqrt(squares / (n - 1)),
    meanOverTravel: area / (displacementMm[end - 1]! - displacementMm[start]!),
    drift: blocks && driftOf(blocks),
  };
}

/** Means of equal blocks, as deviations from the overall mean so that a plateau without spread gives exact zeros. */
function blockMeans(force: Float64Array, mean: number): Float64Array | null {
  const blocks = BLOCKS.find((step) => force.length >= step.points)?.blocks;
  if (!blocks) return null;
  return Float64Array.from({ length: blocks }, (_, block) => {
    const from = Math.floor((block * force.length) / blocks);
    const to = Math.floor(((block + 1) * force.length) / blocks);
    let sum = 0;
    for (let index = from; index < to; index += 1) sum += force[index]! - mean;
    return sum / (to - from);
  });
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
