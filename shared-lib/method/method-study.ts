import type { ResultValue } from '../calculation/result.ts';
import { normalQuantile } from '../statistics/distributions.ts';

/** What a measurement study found out about the readings of one property of a method. */
export interface MethodStudy {
  property: string;
  /** Standard deviation of one person's readings of the same part; `null` for a grade. */
  repeatability: number | null;
  /** Standard deviation between persons; `null` for a grade. */
  reproducibility: number | null;
  /** 'gauge s 0.12 N/15 mm, 27 % of the spread, 2026-01-30' */
  text: string;
}

/**
 * The result as the guarded rule takes it: its interval, but no narrower than the measurement study of its method allows.
 *
 * The interval of a result comes from the scatter of its own readings. One person's readings agree in whatever that person
 * does differently from others, so they cannot show it: five readings that happen to lie close together do not know the value
 * better than the method does. With repeatability s_r and reproducibility s_R from the study, a mean of n readings by one
 * person has the standard uncertainty u = √(s_r²/n + s_R²). Ends of the interval nearer to the value than k·u are
 * moved out to it, k being the normal quantile for the level of the interval.
 * Taken, not added: the scatter of the readings holds s_r already.
 * A result without an interval stays without: the study tells of the method, not of how much the material varies.
 *
 * Source: JCGM 106:2012, 8.3 (the guard band is a multiple of the uncertainty of measurement); JCGM 100:2008, 4.3 and 5.1 (an
 * earlier study as the source of u; independent parts add in squares); clauses from memory. The rule of taking
 * the larger of the two is ours.
 */
export function allowForStudy(result: ResultValue, study: MethodStudy | null): ResultValue {
  const reach = reachOf(result, study);
  if (reach === null || result.value === null) return result;
  const low = result.low === null ? null : Math.min(result.low, result.value - reach);
  const high = result.high === null ? null : Math.max(result.high, result.value + reach);
  return low === result.low && high === result.high ? result : { ...result, low, high };
}

function reachOf({ bound, level, n }: ResultValue, study: MethodStudy | null): number | null {
  if (study === null || study.repeatability === null || study.reproducibility === null) return null;
  if (bound !== 'exact' || level === null || level <= 0 || level >= 1 || n < 1) return null;
  const uncertainty = Math.sqrt(study.repeatability ** 2 / n + study.reproducibility ** 2);
  return normalQuantile((1 + level) / 2) * uncertainty;
}
