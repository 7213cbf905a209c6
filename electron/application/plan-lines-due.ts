import type { TodayView } from '../../shared-lib/notebook/views.ts';
import { dueAt } from '../../shared-lib/plan/due-at.ts';
import { momentText } from '../../shared-lib/plan/moment-text.ts';
import type { PlanLine } from '../../shared-lib/plan/plan.ts';
import type { OpenNotebook } from './open-notebook.ts';
import { planLineState } from './plan-line-state.ts';
import { groupBy } from './queries/group-by.ts';
import { samplesOnTheWay, testsOfLines, versionsFollowed } from './queries/plans.ts';

/** Common practice: what falls due within a week can still be prepared for. */
const AHEAD_MS = 7 * 86_400_000;

/** Tests that plans ask for, that nobody has begun and that are due within a week or should have been made: those of one sample and moment together. */
export function planLinesDue({ store, methods }: OpenNotebook, now: Date): TodayView['due'] {
  const named = ({ methodId, preparation }: PlanLine) => `${methods.find(methodId)?.shortTitle ?? methodId}${preparation ? ` (${preparation})` : ''}`;
  return versionsFollowed(store).flatMap((followed) => {
    const { title, lines } = followed.content;
    const moments = [...groupBy(lines, ({ moment }) => momentText(moment))];
    return samplesOnTheWay(store, followed).flatMap(({ sampleId, sampleCode, planId, ...times }) => {
      const begun = testsOfLines(store, sampleId, planId);
      return moments.flatMap(([when, together]) => {
        const open = together.filter(({ lineId }) => !begun.has(lineId));
        const due = dueAt(together[0]!.moment, times);
        if (open.length === 0 || due === null || Date.parse(due) > now.getTime() + AHEAD_MS) return [];
        return [
          {
            what: `${open.map(named).join(', ')}: ${sampleCode}`,
            why: `Asked for ${when} by the plan ${title}.`,
            dueOn: due.slice(0, 10),
            overdue: planLineState(null, due, now) === 'overdue',
            sampleId,
            testId: '',
          },
        ];
      });
    });
  });
}
