import type { TodayView } from '../../shared-lib/notebook/views.ts';
import { dueAt } from '../../shared-lib/plan/due-at.ts';
import { momentText } from '../../shared-lib/plan/moment-text.ts';
import type { PlanContent, PlanLine } from '../../shared-lib/plan/plan.ts';
import type { OpenNotebook } from './open-notebook.ts';
import { planLineState } from './plan-line-state.ts';
import { groupBy } from './queries/group-by.ts';
import { findPlanVersion, linesWithTest, samplesWithPlan } from './queries/plans.ts';

/** Common practice: what falls due within a week can still be prepared for. */
const AHEAD_MS = 7 * 86_400_000;

/** Tests that plans ask for, that nobody has begun and that are due within a week or should have been made: those of one sample and moment together. */
export function planLinesDue({ store, methods }: OpenNotebook, now: Date): TodayView['due'] {
  const begun = new Set(linesWithTest(store).map((line) => keyOf(line)));
  const contents = new Map<string, PlanContent>();
  const contentOf = (planId: string, version: string): PlanContent => {
    const key = `${planId} ${version}`;
    const content = contents.get(key) ?? findPlanVersion(store, planId, version)!.content;
    contents.set(key, content);
    return content;
  };
  const named = ({ methodId, preparation }: PlanLine) => `${methods.find(methodId)?.shortTitle ?? methodId}${preparation ? ` (${preparation})` : ''}`;
  return samplesWithPlan(store).flatMap((followed) => {
    const { sampleId, sampleCode, planId, version } = followed;
    const { title, lines } = contentOf(planId, version);
    const open = lines.filter(({ lineId }) => !begun.has(keyOf({ sampleId, planId, lineId })));
    return [...groupBy(open, ({ moment }) => momentText(moment))].flatMap(([when, together]) => {
      const due = dueAt(together[0]!.moment, followed);
      if (due === null || Date.parse(due) > now.getTime() + AHEAD_MS) return [];
      return [
        {
          what: `${together.map(named).join(', ')}: ${sampleCode}`,
          why: `Asked for ${when} by the plan ${title}.`,
          dueOn: due.slice(0, 10),
          overdue: planLineState(null, due, now) === 'overdue',
          sampleId,
          testId: '',
        },
      ];
    });
  });
}

function keyOf({ sampleId, planId, lineId }: { sampleId: string; planId: string; lineId: string }): string {
  return `${sampleId} ${planId} ${lineId}`;
}
