import { normalQuantile } from './distributions.ts';

export interface SurvivalRow {
  time: number;
  /** Under observation just before `time`. */
  atRisk: number;
  /** Events at `time`; 0 where readings only ended. */
  events: number;
  survival: number;
  /** `null` where the variance has no value: before the first event and once nothing survives. */
  low: number | null;
  high: number | null;
}

export interface SurvivalCurve {
  rows: SurvivalRow[];
  /** Time by which half had the event; a side that the readings do not reach is `null`. */
  median: { value: number | null; low: number | null; high: number | null };
}

const HALF = 0.5;
/** Products of fractions that should be one half miss it by rounding. */
const ROUNDING = 1e-12;

/**
 * Product-limit estimate of the share without the event, from times that are event times (`true`) or only lower bounds
 * (`false`), with Greenwood's variance. A bound that ends at an event time counts as at risk there.
 * @param times finite; a row per distinct time is returned in order.
 * @param transform scale on which the interval is symmetric. `log-log` stays within 0 and 1.
 * @throws RangeError for lists of different length, without times, or a time that is not finite.
 * Source: E. L. Kaplan, P. Meier, J. Am. Stat. Assoc. 53 (1958) 457; median interval: R. Brookmeyer, J. Crowley,
 * Biometrics 38 (1982) 29.
 */
export function kaplanMeier(
  times: readonly number[],
  events: readonly boolean[],
  level = 0.95,
  transform: 'log' | 'log-log' = 'log-log',
): SurvivalCurve {
  if (times.length === 0 || times.length !== events.length) {
    throw new RangeError(`Each time needs its event mark: ${times.length} times, ${events.length} marks.`);
  }
  if (!times.every(Number.isFinite)) throw new RangeError('Times must be finite numbers.');
  const z = normalQuantile((1 + level) / 2);
  const readings = times.map((time, index) => ({ time, event: events[index]! })).sort((a, b) => a.time - b.time);
  const rows: SurvivalRow[] = [];
  let survival = 1;
  let variance = 0;
  for (let first = 0; first < readings.length; ) {
    const { time } = readings[first]!;
    let next = first;
    let count = 0;
    for (; next < readings.length && readings[next]!.time === time; next++) if (readings[next]!.event) count++;
    const atRisk = readings.length - first;
    survival *= (atRisk - count) / atRisk;
    variance += count / (atRisk * (atRisk - count));
    rows.push({ time, atRisk, events: count, survival, ...limitsOf(survival, Math.sqrt(variance) * z, transform) });
    first = next;
  }
  return { rows, median: medianOf(rows) };
}

/** `reach`: z times the standard error of ln S. */
function limitsOf(survival: number, reach: number, transform: 'log' | 'log-log'): { low: number | null; high: number | null } {
  if (survival === 0 || survival === 1) return { low: null, high: null };
  if (transform === 'log') return { low: survival * Math.exp(-reach), high: Math.min(1, survival * Math.exp(reach)) };
  const power = Math.exp(reach / -Math.log(survival));
  return { low: survival ** power, high: survival ** (1 / power) };
}

function medianOf(rows: SurvivalRow[]): SurvivalCurve['median'] {
  const firstBelow = (limit: number, curve: (row: SurvivalRow) => number) => rows.find((row) => row.events > 0 && curve(row) <= limit)?.time ?? null;
  const atOrBelow = firstBelow(HALF + ROUNDING, (row) => row.survival);
  const below = firstBelow(HALF - ROUNDING, (row) => row.survival);
  return {
    // A curve that runs level at one half has its median in the middle of that stretch.
    value: atOrBelow === null ? null : below === null || below === atOrBelow ? atOrBelow : (atOrBelow + below) / 2,
    low: firstBelow(HALF + ROUNDING, (row) => row.low ?? row.survival),
    high: firstBelow(HALF + ROUNDING, (row) => row.high ?? 1),
  };
}
