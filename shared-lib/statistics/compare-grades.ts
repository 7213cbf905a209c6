import { formatNumber } from '../quantity/format.ts';
import { adjustP } from './adjust-p.ts';
import { dunnP } from './dunn.ts';
import { kruskalWallis } from './kruskal-wallis.ts';
import { mannWhitney } from './mann-whitney.ts';
import { allPairs } from './pair-comparison.ts';
import { lowerQuantile, signSumDistribution } from './rank-sum-distribution.ts';
import { summarise } from './summarise.ts';
import type { Trial, TrialComparison, TrialLevel } from './trial-comparison.ts';

const MOST_FOR_MEDIAN = 200;

/**
 * Compares trials of grades by ranks: a grade says more or less, not how much. Overall Kruskal–Wallis; pairs by exact
 * Mann–Whitney tests or, where so few readings could never tell any pair apart that way, by Dunn's ranks among all
 * trials; p values by Holm. The interval of each shift is that of its pair alone.
 */
export function compareGrades(trials: readonly Trial[], control: number | null, level: number): TrialComparison {
  const groups = trials.map(({ values }) => values);
  const places = control === null ? allPairs(groups.length) : groups.flatMap((_, a): [number, number][] => (a === control ? [] : [[a, control]]));
  const overall = kruskalWallis(groups);
  const tests = places.map(([a, b]) => mannWhitney(groups[a]!, groups[b]!, level));
  const hopeless = places.some(([a, b]) => smallestP(groups[a]!.length, groups[b]!.length) * places.length > 1 - level);
  const ps = adjustP(hopeless ? dunnP(groups, places) : tests.map(({ p }) => p), 'holm');
  const notes = ['These are grades, so trials are compared by rank: which of two readings is the higher, not by how much.'];
  if (hopeless) notes.push('With so few readings two trials taken alone could never be told apart among so many comparisons; each pair is judged by its ranks among all trials (Dunn, Holm).');
  if (overall) notes.push(`Overall: Kruskal–Wallis H = ${formatNumber(overall.statistic, 2)}, ${methodText(overall.method)}.`);
  else notes.push('All grades are equal: there is nothing to tell the trials apart by.');
  if (tests.some(({ low }) => low === null)) notes.push('Where a shift has no interval, so few readings cannot reach the level.');
  return {
    levels: groups.map((values) => medianLevel(values, level)),
    pairs: places.map(([a, b], i) => ({ a, b, difference: tests[i]!.shift, low: tests[i]!.low, high: tests[i]!.high, p: ps[i]! })),
    method: hopeless ? 'Dunn, Holm' : 'Mann–Whitney, Holm',
    f: null,
    p: overall?.p ?? null,
    welchF: null,
    welchP: null,
    spread: null,
    notes,
    flags: [],
  };
}

/** p of two groups that do not overlap at all. */
function smallestP(m: number, n: number): number {
  let ways = 1;
  for (let i = 1; i <= m; i++) ways *= (n + i) / i;
  return 2 / ways;
}

function methodText(method: 'exact' | 'sampled' | 'chi-square'): string {
  return method === 'exact' ? 'p counted exactly' : method === 'sampled' ? 'p from 20 000 rearrangements of the readings' : 'p by chi-square';
}

/** Median with the interval of the sign test. */
function medianLevel(values: readonly number[], level: number): TrialLevel {
  const sorted = [...values].sort((a, b) => a - b);
  const { median } = summarise(values);
  const outer = values.length > MOST_FOR_MEDIAN ? -1 : lowerQuantile(signSumDistribution(values.map(() => 1)), (1 - level) / 2);
  return { value: median, low: outer < 0 ? null : sorted[outer]!, high: outer < 0 ? null : sorted[sorted.length - 1 - outer]! };
}
