import type { FinishedReadings, FollowUp } from '../method/method.ts';
import { numberIn, textIn } from '../method/sheet.ts';
import { formatNumber, formatValue } from '../quantity/format.ts';
import { daysAfter, isIsoDate } from '../quantity/iso-date.ts';

/**
 * After a build-up test that was finished before the bond is there: check it on the day on which it should be strong
 * enough. Needs the day of lamination.
 */
export function buildFollowUp({ results, conditions, finishedOn }: FinishedReadings): FollowUp[] {
  const laminatedOn = textIn(conditions, 'laminatedOn');
  const required = numberIn(conditions, 'requiredNPer15mm');
  const hours = results.hoursUntilRequired;
  // A bound says that the curve never reaches the strength, or was above it from the start: there is no day to wait for.
  if (laminatedOn === undefined || !isIsoDate(laminatedOn) || required === undefined || hours?.bound !== 'exact' || hours.value === null) return [];
  // The hour of lamination is not known: a day that was begun counts as a whole one.
  const dueOn = daysAfter(laminatedOn, Math.ceil(hours.value / 24));
  // Strips peeled on that day or later have answered already.
  if (dueOn <= finishedOn) return [];
  const { text, intervalText } = formatValue(hours);
  return [
    {
      what: 'Check that the bond is strong enough',
      dueOn,
      why: `By its build-up the bond reaches ${formatNumber(required, 2)} N/15 mm about ${text} after lamination on ${laminatedOn}${intervalText === '' ? '' : ` (${intervalText})`}.`,
      settledBy: ['lamination-bond', 'bond-build'],
    },
  ];
}
