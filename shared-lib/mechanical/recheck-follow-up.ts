import type { FinishedReadings, FollowUp } from '../method/method.ts';
import { textIn } from '../method/sheet.ts';
import { formatPlain } from '../quantity/format.ts';
import { daysAfter, isIsoDate } from '../quantity/iso-date.ts';

/** Common practice: bubbles show within a day, tunnels and curl within a week. */
const CHECKS = [
  { days: 1, name: 'after 24 h' },
  { days: 7, name: 'after 7 days' },
];
/** A check this much earlier stands for the one that was due. */
const EARLY = 0.8;

/** The next check of a laminate that is due after the last one made. Needs the day of lamination. */
export function recheckFollowUp({ results, conditions }: FinishedReadings): FollowUp[] {
  const laminatedOn = textIn(conditions, 'laminatedOn');
  const hours = results.lastCheckH?.value;
  if (laminatedOn === undefined || !isIsoDate(laminatedOn) || hours == null) return [];
  const next = CHECKS.find(({ days }) => hours < EARLY * 24 * days);
  if (!next) return [];
  return [
    {
      what: `Check the lamination again ${next.name}`,
      dueOn: daysAfter(laminatedOn, next.days),
      why: `Laminated on ${laminatedOn} and last checked after ${formatPlain(hours)} h; bubbles, tunnels and curl may still come.`,
      settledBy: ['lamination-recheck'],
    },
  ];
}
