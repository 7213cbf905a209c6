/** The comparison of group `a` with group `b`, by their places in the list. */
export interface PairComparison {
  a: number;
  b: number;
  /** a minus b. */
  difference: number;
  /** Simultaneous interval: all intervals of one comparison hold together at the level. `null` where it cannot be given. */
  low: number | null;
  high: number | null;
  /** Adjusted for all comparisons made; `null` where the pair shows no spread to judge by. */
  p: number | null;
}

/** Every pair of `count` groups once, in order. */
export function allPairs(count: number): [a: number, b: number][] {
  return Array.from({ length: count }, (_, a) => a).flatMap((a) => Array.from({ length: count - a - 1 }, (_, step): [number, number] => [a, a + 1 + step]));
}

/** Degrees of freedom of the difference of two means with variances `a` and `b` (each s²/n), after Welch and Satterthwaite. */
export function welchDegreesOfFreedom(a: number, aDf: number, b: number, bDf: number): number {
  // Scaled, so that tiny variances do not vanish when squared.
  const share = a / (a + b);
  return 1 / (share ** 2 / aDf + (1 - share) ** 2 / bDf);
}
