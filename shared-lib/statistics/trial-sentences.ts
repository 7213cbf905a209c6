import { decimalsFor, formatNumber, plainDecimals } from '../quantity/format.ts';
import { differenceUnit } from '../quantity/difference-unit.ts';
import { findRoot } from './find-root.ts';
import { smallestCount } from './smallest-count.ts';
import { tPower } from './t-power.ts';
import type { TrialComparison, TrialPair } from './trial-comparison.ts';

interface Setting {
  names: string[];
  counts: number[];
  unit: string;
  level: number;
  grades: boolean;
  /** Smallest difference that matters, if the reader has said it. */
  wanted?: number;
}

/** Nine times in ten. */
const POWER = 0.9;
/** More pairs than this are left to the table and the letters. */
const MOST_SENTENCES = 30;
const MOST_READINGS = 1000;

export interface TrialSentences {
  /** One per pair, in order; `null` where very many pairs leave it to the table. */
  pairs: (string | null)[];
  /** On all pairs together. */
  overall: string[];
}

/** The outcome of a comparison in plain sentences: what differs, by how much, how sure, and what it would take to know. */
export function trialSentences(comparison: TrialComparison, given: Setting): TrialSentences {
  const setting = { ...given, unit: differenceUnit(given.unit) };
  const { pairs, spread } = comparison;
  const alpha = 1 - setting.level;
  const found = pairs.filter(({ p }) => p !== null && p < alpha);
  const judged = pairs.filter(({ p }) => p !== null);
  const perPair = alpha / Math.max(1, judged.length);
  const needed = spread !== null && setting.wanted !== undefined ? countFor(setting.wanted, spread, perPair) : null;
  const many = pairs.length > MOST_SENTENCES;
  const named = new Set(many ? found.slice(0, MOST_SENTENCES) : pairs);
  const count = judged.length === 0 ? `None of the ${pairs.length} pairs can be compared: their readings do not tell the spread to judge a difference by.` : found.length === 0 ? `None of the ${pairs.length} pairs can be told apart.` : `${found.length} of ${pairs.length} pairs can be told apart${found.length > MOST_SENTENCES ? `; the first ${MOST_SENTENCES} are named here` : ''}. The rest is in the table.`;
  return {
    pairs: pairs.map((pair) => (!named.has(pair) ? null : pair.p !== null && pair.p < alpha ? apart(pair, setting) : together(pair, setting, needed))),
    overall: [...(many ? [count] : []), ...planning(setting, spread, perPair)],
  };
}

function apart({ a, b, difference, low, high, p }: TrialPair, setting: Setting): string {
  const { names, unit, level, grades } = setting;
  if (difference === null) return `${names[a]} and ${names[b]} differ (p = ${pText(p!)}); with so many readings that are only bounds, it cannot be said by how much.`;
  if (difference === 0) return `${names[a]} and ${names[b]} differ by rank (p = ${pText(p!)}), though the middle of their differences is zero.`;
  const decimals = low !== null && high !== null ? decimalsFor(low, high) : plainDecimals(difference);
  const size = formatNumber(Math.abs(difference), decimals);
  const flip = difference < 0;
  const ends = low === null || high === null ? null : [flip ? -high : low, flip ? -low : high];
  const interval = ends ? `, ${Number((level * 100).toPrecision(6))} % interval ${formatNumber(ends[0]!, decimals)} to ${formatNumber(ends[1]!, decimals)}` : ` (p = ${pText(p!)})`;
  const amount = unit === '' || grades ? size : `${size} ${unit}`;
  return `${names[a]} is ${amount} ${flip ? 'lower' : 'higher'} than ${names[b]}${interval}.`;
}

function together({ a, b, p, difference }: TrialPair, { names, counts, unit, wanted }: Setting, needed: number | string | null): string {
  const [m, n] = [counts[a]!, counts[b]!];
  if (p === null && difference === null) return `${names[a]} and ${names[b]} cannot be compared: their readings are too open or too coarse to estimate the mean and spread of both.`;
  if (p === null) return `${names[a]} and ${names[b]} cannot be compared: their readings show no spread to judge a difference by.`;
  const with_ = m === n ? (n === 1 ? 'with one specimen each' : `with these ${n} specimens`) : `with ${m} and ${n} specimens`;
  const more = needed === null ? '' : `; ${needed} per trial would show a difference of ${formatNumber(wanted!, plainDecimals(wanted!))}${unit && ` ${unit}`}`;
  return `${names[a]} cannot be told from ${names[b]} ${with_}${more}.`;
}

/** What as many specimens as these would show, so that "no difference found" is not read as "no difference". */
function planning({ counts, unit }: Setting, spread: number | null, perPair: number): string[] {
  const n = Math.min(...counts);
  if (spread === null || n < 2 || n > MOST_READINGS) return [];
  const power = (sds: number) => tPower(n, sds, 1, perPair);
  let far = 1;
  while (power(far) < POWER && far < 1e3) far *= 2;
  if (far >= 1e3) return [];
  const size = findRoot((sds) => power(sds) - POWER, 0, far, 1e-4) * spread;
  return [`With ${n} specimens per trial a true difference of ${formatNumber(size, plainDecimals(Number(size.toPrecision(2))))}${unit && ` ${unit}`} is found nine times in ten; smaller ones may be missed.`];
}

function countFor(wanted: number, spread: number, perPair: number): number | string {
  return smallestCount((n) => tPower(n, wanted, spread, perPair), POWER, 2, MOST_READINGS) ?? `more than ${MOST_READINGS}`;
}

function pText(p: number): string {
  return p < 0.0001 ? 'less than 0.0001' : formatNumber(p, p < 0.01 ? 4 : 3);
}
