import { InputError } from '../../calculation/input-error.ts';
import type { Flag, ResultValue } from '../../calculation/result.ts';
import { valueWithoutInterval } from '../../calculation/value-without-interval.ts';
import { formatNumber, plainDecimals } from '../../quantity/format.ts';
import { bracketedMean } from '../../statistics/bracketed-mean.ts';
import { clopperPearson } from '../../statistics/clopper-pearson.ts';
import { chiSquareUpperTail } from '../../statistics/distributions.ts';
import { grubbsTest } from '../../statistics/grubbs.ts';
import { leastLasting } from '../../statistics/least-lasting.ts';
import { poissonInterval } from '../../statistics/poisson-interval.ts';
import { summarise } from '../../statistics/summarise.ts';
import { medianOutcome } from './median-outcome.ts';
import { censoredOf, type ReadingColumn, type ReadValue } from './reading-column.ts';
import type { Statistic } from './written-method.ts';

/** A property to be worked out, with what was read for it. */
export interface PropertyInput {
  title: string;
  statistic: Statistic;
  unit: string;
  column: ReadingColumn;
  /** Place of the column in the input, for refusals and flags. */
  field: string;
  against: ReadingColumn | null;
  againstField: string;
  passes: { lower: number | null; upper: number | null } | null;
  areaCm2: number | null;
}

export interface PropertyOutcome {
  result: ResultValue;
  notes: string[];
  flags: Flag[];
  /** The single values that the statistic was taken of; empty where they are not of its unit. */
  values: (ReadValue & { doubtful: boolean })[];
}

/** Grubbs: a reading this unlikely is called doubtful. */
const DOUBTFUL = 0.05;
const CM2_PER_DM2 = 100;
/** 1 − 95 %: at least this to the power 1/n of the material lies at or above the lowest of n readings, or at or below the highest. */
const LEFT_OUT = 0.05;
/** Counts that differ more from row to row than this often by chance lie in clusters. */
const CLUSTERED = 0.05;

/** One statistic of one column of readings, with the interval that belongs to it. @throws InputError naming the reading at fault */
export function propertyOutcome(input: PropertyInput, level: number): PropertyOutcome {
  const { statistic, unit, column, title } = input;
  const { read } = column;
  if (read.length === 0) return { result: valueWithoutInterval(null, unit, 0), notes: [`${title}: ${column.label} was not read.`], flags: [], values: [] };
  switch (statistic) {
    case 'mean':
      return withDoubts(input, read, meanOf(read, unit, level, title));
    case 'change-pct':
    case 'ratio': {
      const pairs = pairsOf(input);
      return withDoubts(input, pairs, meanOf(pairs, unit, level, title));
    }
    case 'median':
    case 'median-grade': {
      const found = medianOutcome(column, title, unit, level);
      return column.kind === 'grade' ? plain(found, read) : withDoubts(input, read, found);
    }
    case 'minimum':
    case 'maximum':
      return plain(extreme(input), read);
    case 'share-passing':
      return { ...share(input, level), flags: [], values: [] };
    case 'count-per-area':
      return { ...countPerArea(input, level), flags: [], values: [] };
  }
}

type Found = Pick<PropertyOutcome, 'result' | 'notes'>;

function plain(found: Found, read: ReadValue[]): PropertyOutcome {
  return { ...found, flags: [], values: read.map((one) => ({ ...one, doubtful: false })) };
}

function meanOf(read: ReadValue[], unit: string, level: number, title: string): Found {
  const { mean, note } = bracketedMean(read.map(censoredOf), unit, level);
  if (mean.bound !== 'exact') return { result: mean, notes: [`${title}: ${note}`] };
  if (read.length === 1) return { result: mean, notes: [`${title}: one reading shows no spread, so there is no interval.`] };
  return { result: mean, notes: read.some(({ orMore }) => orMore) ? [`${title}: readings that are ‘or more’ count as such (a normal distribution by maximum likelihood).`] : [] };
}

/** Each row's reading against the one before. */
function pairsOf({ column, against, againstField, statistic, title }: PropertyInput): ReadValue[] {
  return column.read.map(({ index, value }) => {
    const before = against?.read.find((other) => other.index === index);
    if (!before || before.value === 0) {
      const fault = before ? `is 0, against which no ${statistic === 'ratio' ? 'ratio' : 'change'} can be given` : 'is missing';
      throw new InputError(`${againstField}.values[${index}]`, before?.value ?? null, `${title}: ${against?.label ?? 'the reading before'} ${fault}.`);
    }
    return { index, value: statistic === 'ratio' ? value / before.value : (100 * (value - before.value)) / before.value, orMore: false };
  });
}

/** A doubtful value is marked and counts; whether it does is for a person to decide. What is ‘or more’ is not looked at. */
function withDoubts({ title, unit, field }: PropertyInput, read: ReadValue[], found: Found): PropertyOutcome {
  const exact = read.filter(({ orMore }) => !orMore);
  const grubbs = grubbsTest(exact.map(({ value }) => value), DOUBTFUL);
  const odd = grubbs?.outlying ? exact[grubbs.index]! : null;
  const flags: Flag[] =
    odd && grubbs
      ? [
          {
            code: 'doubtful-reading',
            where: `${field}.values[${odd.index}]`,
            text: `${title}: ${said(odd.value, unit)} lies ${formatNumber(grubbs.statistic, 2)} standard deviations from the mean of ${exact.length} (Grubbs, two-sided 5 %: ${formatNumber(grubbs.critical, 2)}); it is kept: look for its cause.`,
          },
        ]
      : [];
  return { ...found, flags, values: read.map((one) => ({ ...one, doubtful: one === odd })) };
}

/** The lowest or highest reading says nothing about what was not read, but how much of the material lies beyond. */
function extreme({ column, statistic, unit, title }: PropertyInput): Found {
  const { read, kind } = column;
  const n = read.length;
  const lowest = statistic === 'minimum';
  const result = lowest ? leastLasting(read.map(({ value, orMore }) => ({ value, ended: !orMore })), unit) : highest(read, unit);
  // Rounded down: the sentence must not promise more than there is. Nothing lies for certain at or below an open highest.
  const share = formatNumber(Math.floor(100 * LEFT_OUT ** (1 / n)), 0);
  const told = kind !== 'grade' && n > 1 && (lowest || result.bound === 'exact');
  return { result, notes: told ? [`${title}: no interval; from ${n} readings one can be 95 % sure that at least ${share} % of the material lies at or ${lowest ? 'above' : 'below'} it.`] : [] };
}

/** No less than the highest of those that were not read to their end. */
function highest(read: ReadValue[], unit: string): ResultValue {
  const value = Math.max(...read.map((one) => one.value));
  if (read.some(({ orMore }) => orMore)) return { value, unit, low: value, high: null, level: null, n: read.length, bound: 'at-least' };
  return valueWithoutInterval(value, unit, read.length);
}

function share({ column, passes, unit, title, field }: PropertyInput, level: number): Found {
  const n = column.read.length;
  const lower = column.kind === 'yes-no' ? 1 : (passes?.lower ?? null);
  const upper = column.kind === 'yes-no' ? null : (passes?.upper ?? null);
  const passed = column.read.filter(({ index, value, orMore }) => {
    if (orMore && ((upper !== null && value <= upper) || (lower !== null && value < lower))) {
      throw new InputError(`${field}.values[${index}]`, value, `${title}: whether ${said(value, column.unit)} ‘or more’ passes cannot be told; read it to its end.`);
    }
    return (lower === null || value >= lower) && (upper === null || value <= upper);
  }).length;
  const { low, high } = clopperPearson(passed, n, level);
  return {
    result: { value: (100 * passed) / n, unit, low: 100 * low, high: 100 * high, level, n, bound: 'exact' },
    notes: [`${title}: ${passed} of ${n} pass; exact interval.`],
  };
}

function countPerArea({ column, areaCm2, unit, title }: PropertyInput, level: number): Found {
  const n = column.read.length;
  const total = column.read.reduce((sum, { value }) => sum + value, 0);
  const areaDm2 = (n * areaCm2!) / CM2_PER_DM2;
  const { low, high } = poissonInterval(total, level);
  return {
    result: { value: total / areaDm2, unit, low: low / areaDm2, high: high / areaDm2, level, n, bound: 'exact' },
    notes: [`${title}: ${total} counted on ${said(n * areaCm2!, 'cm²')}; exact interval, for what is spread at random.`, ...clustering(column, title)],
  };
}

/** Counts that differ by more than chance would have them make the interval too short: Fisher's index of dispersion. */
function clustering({ read }: ReadingColumn, title: string): string[] {
  const { mean, standardDeviation } = summarise(read.map(({ value }) => value));
  if (standardDeviation === null || !(mean > 0)) return [];
  const dispersion = standardDeviation ** 2 / mean;
  if (chiSquareUpperTail((read.length - 1) * dispersion, read.length - 1) >= CLUSTERED) return [];
  return [`${title}: the counts differ more from row to row than chance would have it (variance ${formatNumber(dispersion, 1)} times the mean), so the true interval is wider.`];
}

function said(value: number, unit: string): string {
  return `${formatNumber(value, plainDecimals(value))}${unit && ` ${unit}`}`;
}
