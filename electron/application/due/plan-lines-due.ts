import { dueAt } from '../../../shared-lib/plan/due-at.ts';
import { momentText } from '../../../shared-lib/plan/moment-text.ts';
import type { PlanLine } from '../../../shared-lib/plan/plan.ts';
import { dayOf } from '../day-of.ts';
import type { OpenNotebook } from '../open-notebook.ts';
import { groupBy } from '../queries/group-by.ts';
import { samplesOnTheWay, testsOfLines, versionsFollowed } from '../queries/plans.ts';
import { stateOfTest } from '../queries/tests.ts';
import { tooFew } from '../too-few.ts';
import type { StandingDue } from './standing-due.ts';

/** Common practice: what falls due within a week can still be prepared for. */
const AHEAD_MS = 7 * 86_400_000;

/**
 * Tests that plans ask for and that nobody has begun, or finished with fewer rows than asked for, shown from a week before:
 * those of one sample and moment together.
 * @param sampleIds `null`: of all samples
 */
export function planLinesDue(notebook: OpenNotebook, sampleIds: readonly string[] | null): StandingDue[] {
  const { store } = notebook;
  return versionsFollowed(store, sampleIds).flatMap((followed) => {
    const { title, lines } = followed.content;
    const moments = [...groupBy(lines, ({ moment }) => momentText(moment))];
    return samplesOnTheWay(store, followed, sampleIds).flatMap(({ sampleId, sampleCode, planId, ...times }) => {
      const tests = testsOfLines(store, sampleId, planId);
      return moments.flatMap(([when, together]): StandingDue[] => {
        const open = together.flatMap((line) => stillAsked(notebook, line, tests.get(line.lineId)));
        const due = dueAt(together[0]!.moment, times);
        if (open.length === 0 || due === null) return [];
        return [
          {
            kind: 'plan',
            ...whatOf(open, sampleCode),
            why: `Asked for by the plan ${title}, ${when}.`,
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

/** Many tests of one moment are one link; by which methods stands beside it. */
function whatOf(open: string[], sampleCode: string): Pick<StandingDue, 'what' | 'detail'> {
  return open.length === 1 ? { what: `${open[0]}: ${sampleCode}` } : { what: `${open.length} tests: ${sampleCode}`, detail: open.join(', ') };
}

/** A line by name while its test is to be begun, or to be read further. */
function stillAsked({ store, methods }: OpenNotebook, line: PlanLine, testId: string | undefined): string[] {
  const method = methods.find(line.methodId);
  const name = [method?.shortTitle ?? line.methodId, line.preparation ? ` (${line.preparation})` : ''].join('');
  if (testId === undefined) return [name];
  const few = stateOfTest(store, testId) === 'finished' ? tooFew(store, testId, line, method) : null;
  return few ? [`${name} (too few: ${few.text})`] : [];
}
