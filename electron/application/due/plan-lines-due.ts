import { dueAt } from '../../../shared-lib/plan/due-at.ts';
import { momentText } from '../../../shared-lib/plan/moment-text.ts';
import type { PlanLine } from '../../../shared-lib/plan/plan.ts';
import { dayOf } from '../day-of.ts';
import type { OpenNotebook } from '../open-notebook.ts';
import { groupBy } from '../queries/group-by.ts';
import { samplesOnTheWay, testsOfLines, versionsFollowed } from '../queries/plans.ts';
import type { StandingDue } from './standing-due.ts';

/** Common practice: what falls due within a week can still be prepared for. */
const AHEAD_MS = 7 * 86_400_000;

/**
 * Tests that plans ask for and that nobody has begun, shown from a week before: those of one sample and moment together.
 * @param sampleIds `null`: of all samples
 */
export function planLinesDue({ store, methods }: OpenNotebook, sampleIds: readonly string[] | null): StandingDue[] {
  const named = ({ methodId, preparation }: PlanLine) => `${methods.find(methodId)?.shortTitle ?? methodId}${preparation ? ` (${preparation})` : ''}`;
  return versionsFollowed(store, sampleIds).flatMap((followed) => {
    const { title, lines } = followed.content;
    const moments = [...groupBy(lines, ({ moment }) => momentText(moment))];
    return samplesOnTheWay(store, followed, sampleIds).flatMap(({ sampleId, sampleCode, planId, ...times }) => {
      const begun = testsOfLines(store, sampleId, planId);
      return moments.flatMap(([when, together]): StandingDue[] => {
        const open = together.filter(({ lineId }) => !begun.has(lineId));
        const due = dueAt(together[0]!.moment, times);
        if (open.length === 0 || due === null) return [];
        return [
          {
            kind: 'plan',
            what: `${open.map(named).join(', ')}: ${sampleCode}`,
            why: `Asked for ${when} by the plan ${title}.`,
            dueOn: dayOf(due),
            shownFrom: Date.parse(due) - AHEAD_MS,
            sampleId,
            testId: '',
          },
        ];
      });
    });
  });
}
