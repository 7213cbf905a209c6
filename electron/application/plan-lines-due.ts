import type { TodayView } from '../../shared-lib/notebook/views.ts';
import { dueAt } from '../../shared-lib/plan/due-at.ts';
import { momentText } from '../../shared-lib/plan/moment-text.ts';
import type { PlanContent } from '../../shared-lib/plan/plan.ts';
import type { OpenNotebook } from './open-notebook.ts';
import { planLineState } from './plan-line-state.ts';
import { findPlanVersion, linesWithTest, samplesWithPlan } from './queries/plans.ts';

/** Common practice: what falls due within a week can still be prepared for. */
const AHEAD_MS = 7 * 86_400_000;

/** Tests that plans ask for, that nobody has begun and that are due within a week or should have been made. */
export function planLinesDue({ store, methods }: OpenNotebook, now: Date): TodayView['due'] {
  const begun = new Set(linesWithTest(store).map((line) => keyOf(line)));
  const contents = new Map<string, PlanContent>();
  const contentOf = (planId: string, version: string): PlanContent => {
    const key = `${planId} ${version}`;
    const content = contents.get(key) ?? findPlanVersion(store, planId, version)!.content;
    contents.set(key, content);
    return content;
  };
  return samplesWithPlan(store).flatMap((followed) => {
    const { sampleId, sampleCode, planId, version } = followed;
    const content = contentOf(planId, version);
    return content.lines.flatMap(({ lineId, methodId, moment, preparation, reasons }) => {
      const due = dueAt(moment, followed);
      if (due === null || Date.parse(due) > now.getTime() + AHEAD_MS || begun.has(keyOf({ sampleId, planId, lineId }))) return [];
      const when = [momentText(moment), ...(preparation ? [preparation] : [])].join(', ');
      return [
        {
          what: `${methods.find(methodId)?.shortTitle ?? methodId}, ${when}: ${sampleCode}`,
          why: `Plan ${content.title}. ${reasons.map(({ text }) => text).join(' ')}`,
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
