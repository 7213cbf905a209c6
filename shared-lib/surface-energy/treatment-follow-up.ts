import type { FinishedReadings, FollowUp } from '../method/method.ts';
import { numberIn, textIn } from '../method/sheet.ts';
import { formatNumber, formatValue } from '../quantity/format.ts';
import { daysAfter, isIsoDate } from '../quantity/iso-date.ts';

/** After a decay test: test the film again on the day from which it may be below the requirement. Needs the day of treatment. */
export function treatmentFollowUp({ results, conditions }: FinishedReadings): FollowUp[] {
  const treatedOn = textIn(conditions, 'treatedOn');
  const days = results.testAgainBy?.value;
  const until = results.daysUntilRequired;
  if (treatedOn === undefined || !isIsoDate(treatedOn) || days == null || !until) return [];
  const required = `${formatNumber(numberIn(conditions, 'requiredMNm') ?? Number.NaN, 1)} mN/m`;
  const { text, intervalText } = formatValue(until);
  const reached = until.bound === 'at-least' ? `stays above ${required} for` : `falls to ${required} after`;
  const interval = intervalText === '' ? '' : ` (${intervalText})`;
  return [
    {
      what: 'Test the treatment again',
      // Whole days only: on that day the film may still be good, on the next it may not.
      dueOn: daysAfter(treatedOn, Math.floor(days)),
      why: `Treated on ${treatedOn}; by its decay it ${reached} ${text}${interval}: it may be below from day ${formatNumber(Math.floor(days), 0)} on.`,
      settledBy: ['test-fluids', 'treatment-decay'],
    },
  ];
}
