/**
 * Exact distribution of the sum of `take` of the given weights, each choice as likely as another.
 * @param weights whole numbers, e.g. twice the midranks.
 * @returns probabilities by sum, index 0 for the sum 0.
 */
export function choiceSumDistribution(weights: readonly number[], take: number): Float64Array {
  const largest = [...weights].sort((a, b) => b - a).slice(0, take).reduce((sum, weight) => sum + weight, 0);
  // probabilities[j][s]: chance that j are taken so far with sum s; weights are drawn in turn, without replacement.
  const rows = Array.from({ length: take + 1 }, () => new Float64Array(largest + 1));
  rows[0]![0] = 1;
  weights.forEach((weight, index) => {
    const left = weights.length - index;
    for (let j = Math.min(take, index + 1); j >= 0; j--) {
      const row = rows[j]!;
      // Chance that this one is taken when j − 1 have been: so many are still to be taken out of those left.
      const stay = 1 - (take - j) / left;
      const enter = j > 0 ? (take - j + 1) / left : 0;
      const before = rows[j - 1];
      for (let sum = largest; sum >= 0; sum--) {
        row[sum] = row[sum]! * stay + (before && sum >= weight ? before[sum - weight]! * enter : 0);
      }
    }
  });
  return rows[take]!;
}

/**
 * Exact distribution of the sum of the given weights when each is taken or not with even chances (signed ranks).
 * @returns probabilities by sum.
 */
export function signSumDistribution(weights: readonly number[]): Float64Array {
  const largest = weights.reduce((sum, weight) => sum + weight, 0);
  const probabilities = new Float64Array(largest + 1);
  probabilities[0] = 1;
  for (const weight of weights) {
    for (let sum = largest; sum >= 0; sum--) {
      probabilities[sum] = (probabilities[sum]! + (sum >= weight ? probabilities[sum - weight]! : 0)) / 2;
    }
  }
  return probabilities;
}

/** Chance of a sum at least as far from the mean as `observed`; sums equal but for rounding count. */
export function twoSidedTail(probabilities: Float64Array, observed: number, mean: number): number {
  const distance = Math.abs(observed - mean) - 1e-9;
  let tail = 0;
  probabilities.forEach((probability, sum) => {
    if (Math.abs(sum - mean) >= distance) tail += probability;
  });
  return Math.min(1, tail);
}

/** The largest sum whose lower tail, itself included, is at most `p`; −1 where there is none. */
export function lowerQuantile(probabilities: Float64Array, p: number): number {
  let tail = 0;
  for (let sum = 0; sum < probabilities.length; sum++) {
    tail += probabilities[sum]!;
    if (tail > p * (1 + 1e-12)) return sum - 1;
  }
  return probabilities.length - 1;
}
