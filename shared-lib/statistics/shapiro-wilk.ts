import { normalQuantile, normalUpperTail } from './distributions.ts';
import { meanOf, squaresAbout } from './summarise.ts';

const LARGEST_SAMPLE = 5000;

/** Royston's polynomials, constant first: in 1/√n for the two outer weights, in n or ln n for the distribution of W. */
const OUTER_WEIGHT = [0, 0.221157, -0.147981, -2.07119, 4.434685, -2.706056];
const SECOND_WEIGHT = [0, 0.042981, -0.293762, -1.752461, 5.682633, -3.582633];
const SMALL_BOUND = [-2.273, 0.459];
const SMALL_MEAN = [0.544, -0.39978, 0.025054, -6.714e-4];
const SMALL_LOG_SD = [1.3822, -0.77857, 0.062767, -0.0020322];
const LARGE_MEAN = [-1.5861, -0.31082, -0.083751, 0.0038915];
const LARGE_LOG_SD = [-0.4803, -0.082676, 0.0030302];

/**
 * Shapiro–Wilk test of normality.
 * @returns W and the probability of a smaller one for a normal sample; `null` outside 3 to 5000 values or for values
 *   without spread, where the test says nothing.
 * Source: P. Royston, Algorithm AS R94, Appl. Stat. 44 (1995) 547.
 */
export function shapiroWilk(values: readonly number[]): { w: number; p: number } | null {
  const n = values.length;
  if (n < 3 || n > LARGEST_SAMPLE) return null;
  const squares = squaresAbout(values, meanOf(values));
  const sorted = [...values].sort((a, b) => a - b);
  if (!(squares > 0) || sorted[0] === sorted[n - 1]) return null;
  const weights = weightsFor(n);
  const slope = weights.reduce((sum, weight, i) => sum + weight * (sorted[n - 1 - i]! - sorted[i]!), 0);
  const w = Math.min(1, (slope * slope) / squares);
  return { w, p: significance(w, n) };
}

/** Weights of the differences largest − smallest, second largest − second smallest … */
function weightsFor(n: number): number[] {
  const half = n >> 1;
  if (n === 3) return [Math.SQRT1_2];
  const scores = Array.from({ length: half }, (_, i) => -normalQuantile((i + 1 - 0.375) / (n + 0.25)));
  const total = 2 * scores.reduce((sum, score) => sum + score * score, 0);
  const root = 1 / Math.sqrt(n);
  const outer = [scores[0]! / Math.sqrt(total) + polynomial(OUTER_WEIGHT, root)];
  if (n > 5) outer.push(scores[1]! / Math.sqrt(total) + polynomial(SECOND_WEIGHT, root));
  const replaced = outer.reduce((sum, _, i) => sum + 2 * scores[i]! ** 2, 0);
  const taken = outer.reduce((sum, weight) => sum + 2 * weight * weight, 0);
  const divisor = Math.sqrt((total - replaced) / (1 - taken));
  return scores.map((score, i) => outer[i] ?? score / divisor);
}

function significance(w: number, n: number): number {
  if (n === 3) return Math.min(1, Math.max(0, (6 / Math.PI) * (Math.asin(Math.sqrt(w)) - Math.asin(Math.sqrt(0.75)))));
  const deviation = Math.log1p(-w);
  if (n <= 11) {
    const bound = polynomial(SMALL_BOUND, n);
    if (deviation >= bound) return 0;
    return normalUpperTail((-Math.log(bound - deviation) - polynomial(SMALL_MEAN, n)) / Math.exp(polynomial(SMALL_LOG_SD, n)));
  }
  const logN = Math.log(n);
  return normalUpperTail((deviation - polynomial(LARGE_MEAN, logN)) / Math.exp(polynomial(LARGE_LOG_SD, logN)));
}

function polynomial(coefficients: readonly number[], x: number): number {
  return coefficients.reduceRight((sum, coefficient) => sum * x + coefficient, 0);
}
