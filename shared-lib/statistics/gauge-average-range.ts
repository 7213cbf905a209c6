import { chartConstants } from './chart-constants.ts';
import type { CrossedReadings } from './gauge-anova.ts';
import { meanOf } from './summarise.ts';

export interface AverageRangeStudy {
  meanRange: number;
  /** Standard deviations. */
  repeatability: number;
  reproducibility: number;
  part: number;
}

/** With more ranges than this their mean is taken as exact. */
const MANY_RANGES = 15;

/**
 * Measurement study by average and range: the hand method, kept for comparison with old sheets.
 * @throws RangeError for fewer than two appraisers, parts or trials, or more than 25 of any.
 * Source: constants d2* after A. J. Duncan, Quality Control and Industrial Statistics, 5th ed. (1986), table D3, here
 * √(d2² + d3²/g), computed.
 */
export function gaugeAverageRange(readings: CrossedReadings): AverageRangeStudy {
  const [o, p, r] = [readings.length, readings[0]?.length ?? 0, readings[0]?.[0]?.length ?? 0];
  const range = (values: readonly number[]) => Math.max(...values) - Math.min(...values);
  const meanRange = meanOf(readings.flatMap((byPart) => byPart.map(range)));
  const repeatability = meanRange / rangeDivisor(r, o * p);
  const appraisers = readings.map((byPart) => meanOf(byPart.flat()));
  const parts = Array.from({ length: p }, (_, j) => meanOf(readings.flatMap((byPart) => byPart[j]!)));
  const between = range(appraisers) / rangeDivisor(o, 1);
  return {
    meanRange,
    repeatability,
    reproducibility: Math.sqrt(Math.max(0, between ** 2 - repeatability ** 2 / (p * r))),
    part: range(parts) / rangeDivisor(p, 1),
  };
}

/** What the mean of `ranges` ranges of n readings is divided by for a standard deviation. */
function rangeDivisor(n: number, ranges: number): number {
  const { d2, d3 } = chartConstants(n);
  return ranges > MANY_RANGES ? d2 : Math.sqrt(d2 * d2 + (d3 * d3) / ranges);
}
