import type { ResultValue } from '../calculation/result.ts';
import { valueWithoutInterval } from '../calculation/value-without-interval.ts';
import { formatPlain, formatWithInterval } from '../quantity/format.ts';
import { countTrend, type CountTrend } from '../statistics/count-trend.ts';
import { areaM2, defectsOf, type LaminationPlace } from './lamination-places.ts';

/** Coverages nearer to each other than this say nothing about coverage. */
const LEAST_SPAN_PCT = 10;
const PER_PCT = 10;

export interface CoverageLink {
  /** Factor by which the rate of defects grows for every 10 % of ink coverage more. */
  factor: ResultValue;
  trend: CountTrend | null;
  /** What the counts can show, and what not. */
  statement: string;
}

/** Links the defects of one check to the ink coverage of its places. */
export function linkToCoverage(places: readonly LaminationPlace[], level: number): CoverageLink {
  const covered = places.filter(({ coveragePct }) => coveragePct !== undefined);
  const none = (statement: string): CoverageLink => ({ factor: valueWithoutInterval(null, '', covered.length), trend: null, statement });
  if (covered.length < 2) return none('Ink coverage: fewer than two places have one, so the counts cannot be linked to it.');
  const coverages = covered.map(({ coveragePct }) => coveragePct!);
  const [least, most] = [Math.min(...coverages), Math.max(...coverages)];
  if (most - least < LEAST_SPAN_PCT) return none(`Ink coverage: from ${formatPlain(least)} to ${formatPlain(most)} % the places are too alike to link the counts to it; look at bare film and at full solids as well.`);
  const trend = countTrend(covered.map((place) => ({ x: place.coveragePct!, count: defectsOf([place]), exposure: areaM2(place) })), level);
  if (trend === null) return none('Ink coverage: no defect was counted, so there is nothing to link to it.');
  const factor = factorOf(trend, covered.length, level);
  return { factor, trend, statement: statementOf(factor, trend, defectsOf(covered)) };
}

function factorOf({ slope, low, high }: CountTrend, n: number, level: number): ResultValue {
  const times = (of: number) => Math.exp(of * PER_PCT);
  const end = (of: number) => (Number.isFinite(of) ? times(of) : null);
  if (slope === Infinity) return { value: end(low), unit: '', low: end(low), high: null, level, n, bound: 'at-least' };
  if (slope === -Infinity) return { value: end(high), unit: '', low: 0, high: end(high), level, n, bound: 'at-most' };
  return { value: times(slope), unit: '', low: end(low) ?? 0, high: end(high), level, n, bound: 'exact' };
}

function statementOf(factor: ResultValue, { low, high, dispersion }: CountTrend, count: number): string {
  const by = `the rate changes by the factor ${formatWithInterval(factor)} for every ${PER_PCT} % of coverage`;
  const scatter = dispersion > 1.5 ? ' The places differ more than chance and coverage explain; the interval allows for it.' : '';
  const together = ' Coverage goes together with lane, drying and film; the counts alone do not say which of them is the cause.';
  if (low > 0) return `Ink coverage: the ${count} defects show that there are more of them where more ink lies; ${by}.${scatter}${together}`;
  if (high < 0) return `Ink coverage: the ${count} defects show that there are fewer of them where more ink lies; ${by}.${scatter}${together}`;
  return `Ink coverage: the ${count} ${count === 1 ? 'defect' : 'defects'} cannot show whether there are more where more ink lies; ${by}, and 1 lies within. A larger area would narrow it.${scatter}`;
}
