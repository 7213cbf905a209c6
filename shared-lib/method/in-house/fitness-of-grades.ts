import { formatNumber, formatValue } from '../../quantity/format.ts';
import { clopperPearson } from '../../statistics/clopper-pearson.ts';
import type { Fitness, StudiedProperty, StudiedReading } from './studied.ts';

/** Common practice: weighted kappa from 0.75 on is good; nine parts in ten are put on the same side of the limit by everyone. */
const LEAST_KAPPA = 0.75;
const LEAST_AGREED_PCT = 90;
/** A difference counts as seen when this share of repeated gradings differ by less. */
const SEEN = 0.95;

/** Studied grades, or a yes and no read as 1 and 0. */
export function fitnessOfGrades({ title, limit, results, readings }: StudiedProperty): Omit<Fitness, 'property' | 'title'> {
  const { weightedKappa } = results;
  const kappa = weightedKappa?.value ?? null;
  const parts = [...new Set(readings.map(({ part }) => part))].map((part) => readings.filter((reading) => reading.part === part));
  const within = limit ? (value: number) => (limit.lower === null || value >= limit.lower) && (limit.upper === null || value <= limit.upper) : null;
  const alike = within ? parts.filter((part) => new Set(part.map(({ value }) => within(value))).size === 1).length : 0;
  const agreedPct = (100 * alike) / parts.length;
  const bounds = clopperPearson(alike, parts.length);
  const step = seenStep(parts);
  const reasons = [
    kappa === null ? 'Agreement beyond chance cannot be given: the parts studied were all graded alike. Study parts that differ.' : `Beyond chance people agree with weighted kappa ${formatNumber(kappa, 2)} (${formatValue(weightedKappa!, [], 2).intervalText || 'no interval'}, ${parts.length} parts); from ${LEAST_KAPPA} on is common practice.`,
    ...(within ? [`${alike} of ${parts.length} parts were put on the same side of the limit by every reading (95 % interval ${formatNumber(100 * bounds.low, 0)} to ${formatNumber(100 * bounds.high, 0)} %); ${LEAST_AGREED_PCT} % is common practice.`] : []),
    ...(step === null ? [] : [`The smallest difference it can see is ${step} on the scale: ${formatNumber(100 * SEEN, 0)} % of repeated gradings differ by less.`]),
  ];
  const improve = improvement(parts);
  if (limit === null) return { standing: 'studied', text: `${title} was studied, but has no limit to decide at.`, reasons, improve };
  if (kappa === null) return { standing: 'not fit', text: `Whether ${title} is good enough to decide with cannot be said yet.`, reasons, improve };
  const fit = kappa >= LEAST_KAPPA && agreedPct >= LEAST_AGREED_PCT;
  return fit
    ? { standing: 'fit', text: `${title} is good enough to decide with at its limit.`, reasons, improve }
    : { standing: 'not fit', text: `${title} is not good enough to decide with at its limit: ${kappa < LEAST_KAPPA ? 'people grade the same part too differently' : 'too many parts are put on both sides of it'}.`, reasons, improve };
}

/** Just above what nearly all pairs of gradings of one part differ by; `null` without repeated gradings. */
function seenStep(parts: StudiedReading[][]): number | null {
  const apart = parts.flatMap(pairs).map(({ a, b }) => Math.abs(a.value - b.value)).sort((a, b) => a - b);
  if (apart.length === 0) return null;
  const values = [...new Set(parts.flat().map(({ value }) => value))].sort((a, b) => a - b);
  const steps = values.slice(1).map((value, index) => value - values[index]!);
  const finest = steps.length > 0 ? Math.min(...steps) : 1;
  return apart[Math.ceil(SEEN * apart.length) - 1]! + finest;
}

/** Where readings of one part differ more: within one person, or between persons; and between which grades. */
function improvement(parts: StudiedReading[][]): string {
  const all = parts.flatMap(pairs);
  const share = (some: typeof all) => (some.length === 0 ? 0 : some.filter(({ a, b }) => a.value !== b.value).length / some.length);
  const own = share(all.filter(({ a, b }) => a.appraiser === b.appraiser));
  const between = share(all.filter(({ a, b }) => a.appraiser !== b.appraiser));
  if (own === 0 && between === 0) return 'Every part was graded alike every time; there is nothing to improve first.';
  const worst = mixedUp(all);
  const where = worst ? ` Most of the disagreement lies between ${worst[0]} and ${worst[1]}: rewrite those two sentences so that one can tell them apart, and add a picture of each.` : '';
  return between > own
    ? `Improve reproducibility first: people differ from one another more often than from themselves. Grade the same parts together until you agree.${where}`
    : `Improve repeatability first: the same person grades the same part differently. Fix the light, the place looked at and the time of looking.${where}`;
}

/** The two values that stand for the same part most often. */
function mixedUp(all: ReturnType<typeof pairs>): [number, number] | null {
  const counts = new Map<string, number>();
  for (const { a, b } of all) {
    if (a.value === b.value) continue;
    const key = `${Math.min(a.value, b.value)} ${Math.max(a.value, b.value)}`;
    counts.set(key, (counts.get(key) ?? 0) + 1);
  }
  const [most] = [...counts].sort((one, other) => other[1] - one[1]);
  return most ? (most[0].split(' ').map(Number) as [number, number]) : null;
}

function pairs(part: StudiedReading[]): { a: StudiedReading; b: StudiedReading }[] {
  return part.flatMap((a, index) => part.slice(index + 1).map((b) => ({ a, b })));
}
