import { chiSquareUpperTail } from './distributions.ts';
import { solveLower } from './householder.ts';

export interface TimedReading {
  time: number;
  /** `false`: only known to last at least this long. */
  event: boolean;
}

/**
 * Do groups differ in how long (how far, how strongly) they last, with lower bounds among the readings? Log-rank test.
 * @returns `null` where no event is seen while more than one group is at risk.
 * @throws RangeError for fewer than two groups or an empty one.
 * Source: N. Mantel, Cancer Chemother. Rep. 50 (1966) 163; R. Peto, J. Peto, J. R. Stat. Soc. A 135 (1972) 185.
 */
export function logRankTest(groups: readonly (readonly TimedReading[])[]): { statistic: number; degreesOfFreedom: number; p: number; observed: number[]; expected: number[] } | null {
  if (groups.length < 2 || groups.some((group) => group.length === 0)) throw new RangeError('The test needs at least two groups, none of them empty.');
  const k = groups.length;
  const times = [...new Set(groups.flat().filter(({ event }) => event).map(({ time }) => time))].sort((a, b) => a - b);
  const observed = groups.map((group) => group.filter(({ event }) => event).length);
  const expected = groups.map(() => 0);
  const all = groups.flat();
  // The lower half, row after row: very many groups have very many pairs.
  const half = new Float64Array(k * k);
  for (const time of times) {
    const atRisk = groups.map((group) => group.filter((reading) => reading.time >= time).length);
    const total = atRisk.reduce((sum, count) => sum + count, 0);
    const events = all.filter((reading) => reading.event && reading.time === time).length;
    const factor = total > 1 ? (events * (total - events)) / (total - 1) : 0;
    for (let i = 0; i < k; i++) {
      const share = atRisk[i]! / total;
      expected[i]! += events * share;
      const row = i * k;
      half[row + i]! += factor * share;
      for (let j = 0; j <= i; j++) half[row + j]! -= (factor * share * atRisk[j]!) / total;
    }
  }
  const covariance = groups.map((_, i) => groups.map((__, j) => half[Math.max(i, j) * k + Math.min(i, j)]!));
  const statistic = quadraticForm(observed.map((count, i) => count - expected[i]!), covariance);
  return statistic === null ? null : { statistic, degreesOfFreedom: k - 1, p: chiSquareUpperTail(statistic, k - 1), observed, expected };
}

/** vᵀC⁻v for a covariance whose last row follows from the others. */
function quadraticForm(vector: readonly number[], covariance: readonly (readonly number[])[]): number | null {
  const m = vector.length - 1;
  const sizes = Array.from({ length: m }, (_, i) => Math.sqrt(covariance[i]![i]!));
  if (sizes.some((size) => !(size > 0))) return null;
  const correlation = sizes.map((a, i) => sizes.map((b, j) => covariance[i]![j]! / (a * b)));
  const lower = cholesky(correlation);
  if (lower === null) return null;
  const upper = correlation.map((_, i) => correlation.map((__, j) => lower[j]![i]!));
  return solveLower(upper, sizes.map((size, i) => vector[i]! / size)).reduce((sum, value) => sum + value * value, 0);
}

/** L with LLᵀ = A; `null` where A is singular. */
function cholesky(matrix: readonly (readonly number[])[]): number[][] | null {
  const lower = matrix.map((row) => row.map(() => 0));
  for (let i = 0; i < matrix.length; i++) {
    for (let j = 0; j <= i; j++) {
      let sum = matrix[i]![j]!;
      for (let k = 0; k < j; k++) sum -= lower[i]![k]! * lower[j]![k]!;
      if (i === j && !(sum > 1e-12)) return null;
      lower[i]![j] = i === j ? Math.sqrt(sum) : sum / lower[j]![j]!;
    }
  }
  return lower;
}
