import { formatNumber } from '../../quantity/format.ts';
import type { Fitness, StudiedProperty } from './studied.ts';

/** Common practice for a measuring system: a fifth is good, a third no longer. The scatter counts as six standard deviations. */
const MOST_SHARE_PCT = 30;
/** 95 % of the differences between two results lie within this many standard deviations of one: 1.96·√2 (ISO 5725-6). */
const DIFFERENCE = 1.96 * Math.SQRT2;
const REACH = 1.96;
const MOST_REPLICATES = 30;

/** A studied number: whether a result of as many readings as the method asks for decides at the limit. */
export function fitnessOfNumbers({ title, unit, limit, replicates, averaged, results }: StudiedProperty): Omit<Fitness, 'property' | 'title'> {
  const repeatability = results.repeatability?.value ?? 0;
  const reproducibility = results.reproducibility?.value ?? 0;
  const part = results.part?.value ?? 0;
  const n = averaged ? replicates : 1;
  const said = (value: number) => `${twoDigits(value)}${unit && ` ${unit}`}`;
  const scatter = (readings: number) => Math.sqrt(repeatability ** 2 / readings + reproducibility ** 2);
  // Limits that meet in one value leave no room to hold the scatter to.
  const width = limit?.lower != null && limit.upper != null && limit.upper > limit.lower ? limit.upper - limit.lower : null;
  const shareOf = (s: number) => (width !== null ? (600 * s) / width : part > 0 || s > 0 ? (100 * s) / Math.hypot(s, part) : 0);
  const share = shareOf(scatter(n));
  const of = width !== null ? 'of the room between the limits' : 'of the spread of the parts studied';
  const many = n === 1 ? 'One reading' : `A result of ${n} readings`;
  const known = results.gaugePct;
  const reasons = [
    `${many} scatters by ${said(scatter(n))} (standard deviation, whoever reads): ${formatNumber(share, 0)} % ${of}; up to ${MOST_SHARE_PCT} % is common practice.`,
    `The smallest difference it can see between two results is ${said(DIFFERENCE * scatter(n))}, or ${said((DIFFERENCE * repeatability) / Math.sqrt(n))} where the same person made both.`,
    ...(limit ? [`A result nearer to the limit than ${said(REACH * scatter(n))} does not decide.`] : []),
    ...(known?.low != null && known.high != null ? [`The study itself is only so sure: the share of the spread of single readings lies between ${formatNumber(known.low, 0)} and ${formatNumber(known.high, 0)} %.`] : []),
  ];
  const fit = share <= MOST_SHARE_PCT;
  const improve = improvement();
  if (limit === null) return { standing: 'studied', text: `${title} was studied, but has no limit to decide at.`, reasons, improve };
  return fit
    ? { standing: 'fit', text: `${title} is good enough to decide with at its limit.`, reasons, improve }
    : { standing: 'not fit', text: `${title} is not good enough to decide with at its limit: it scatters too much.`, reasons, improve };

  function improvement(): string {
    if (reproducibility ** 2 > repeatability ** 2 / n) {
      return 'Improve reproducibility first: people differ from one another more than their own readings do. Fix what is left to the hand (force, angle, speed, what is looked at), train together on the same parts, or use a weight or a jig. More readings by one person do not help.';
    }
    const enough = Array.from({ length: MOST_REPLICATES }, (_, index) => index + 1).find((readings) => shareOf(scatter(readings)) <= MOST_SHARE_PCT);
    const more = fit || !averaged ? '' : enough === undefined ? ' More readings alone will not do it.' : ` With the mean of ${enough} readings it would be good enough.`;
    return `Improve repeatability first: one person’s readings of the same part scatter more than people differ. Hold the apparatus, the specimen and the place steadier, or take more readings.${more}`;
  }
}

function twoDigits(value: number): string {
  return value === 0 ? '0' : String(Number(value.toPrecision(2)));
}
