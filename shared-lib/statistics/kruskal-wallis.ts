import { chiSquareUpperTail } from './distributions.ts';
import { seededRandom } from './random.ts';
import { midranks } from './ranks.ts';

export interface KruskalWallis {
  /** H, corrected for ties. */
  statistic: number;
  degreesOfFreedom: number;
  p: number;
  /** `exact`: every way to deal the readings out was counted; `sampled`: many random ways; `chi-square`: the large-sample rule. */
  method: 'exact' | 'sampled' | 'chi-square';
  pChiSquare: number;
}

const MOST_ARRANGEMENTS = 60_000;
const SAMPLES = 20_000;
/** With groups of this size and more the chi-square rule is close. */
const LARGE_GROUP = 12;
const SEED = 20260101;

/**
 * Do several groups differ in level, judged by ranks? Exact for few readings, by sampled rearrangements (fixed seed) for
 * small groups, by chi-square for large ones.
 * @returns `null` where all readings are equal.
 * @throws RangeError for fewer than two groups, an empty group or a value that is not finite.
 * Source: W. H. Kruskal, W. A. Wallis, J. Am. Stat. Assoc. 47 (1952) 583.
 */
export function kruskalWallis(groups: readonly (readonly number[])[]): KruskalWallis | null {
  if (groups.length < 2 || groups.some((values) => values.length === 0)) throw new RangeError('A rank test needs at least two groups, none of them empty.');
  const all = groups.flat();
  if (!all.every(Number.isFinite)) throw new RangeError('A rank test needs finite numbers.');
  const { ranks, ties } = midranks(all);
  const sizes = groups.map((values) => values.length);
  const n = all.length;
  const correction = 1 - ties / (n ** 3 - n);
  if (!(correction > 0)) return null;
  const spread = spreadOfSums(ranks, sizes);
  const statistic = ((12 / (n * (n + 1))) * spread - 3 * (n + 1)) / correction;
  const degreesOfFreedom = groups.length - 1;
  const pChiSquare = chiSquareUpperTail(statistic, degreesOfFreedom);
  const common = { statistic, degreesOfFreedom, pChiSquare };
  if (arrangements(sizes) <= MOST_ARRANGEMENTS) return { ...common, p: exactTail(ranks, sizes, spread), method: 'exact' };
  if (Math.min(...sizes) < LARGE_GROUP) return { ...common, p: sampledTail(ranks, sizes, spread), method: 'sampled' };
  return { ...common, p: pChiSquare, method: 'chi-square' };
}

/** Σ(rank sum)²/n over the groups, which H rises with. */
function spreadOfSums(ranks: ArrayLike<number>, sizes: readonly number[]): number {
  let place = 0;
  let total = 0;
  for (const size of sizes) {
    let sum = 0;
    for (const end = place + size; place < end; place++) sum += ranks[place]!;
    total += (sum * sum) / size;
  }
  return total;
}

function arrangements(sizes: readonly number[]): number {
  let left = sizes.reduce((sum, size) => sum + size, 0);
  let ways = 1;
  for (const size of sizes) for (let i = 1; i <= size; i++) ways *= left-- / i;
  return ways;
}

function exactTail(ranks: readonly number[], sizes: readonly number[], observed: number): number {
  const room = [...sizes];
  const sums = sizes.map(() => 0);
  let hits = 0;
  let count = 0;
  const deal = (index: number): void => {
    if (index === ranks.length) {
      count++;
      if (sums.reduce((total, sum, g) => total + (sum * sum) / sizes[g]!, 0) >= observed * (1 - 1e-12)) hits++;
      return;
    }
    for (let g = 0; g < room.length; g++) {
      if (room[g] === 0) continue;
      room[g]!--;
      sums[g]! += ranks[index]!;
      deal(index + 1);
      room[g]!++;
      sums[g]! -= ranks[index]!;
    }
  };
  deal(0);
  return hits / count;
}

function sampledTail(ranks: readonly number[], sizes: readonly number[], observed: number): number {
  const random = seededRandom(SEED);
  const shuffled = Float64Array.from(ranks);
  let hits = 1;
  for (let sample = 0; sample < SAMPLES; sample++) {
    for (let i = shuffled.length - 1; i > 0; i--) {
      const j = Math.floor(random.uniform() * (i + 1));
      const kept = shuffled[i]!;
      shuffled[i] = shuffled[j]!;
      shuffled[j] = kept;
    }
    if (spreadOfSums(shuffled, sizes) >= observed * (1 - 1e-12)) hits++;
  }
  return hits / (SAMPLES + 1);
}
