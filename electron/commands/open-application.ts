import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import type { CallInput, CallName, CallOutput } from '../../shared-lib/api.ts';
import type { MergeView } from '../../shared-lib/notebook/merge-views.ts';
import { Application } from '../application/application.ts';
import { systemClock } from '../store/clock.ts';
import { renderApprovalPdf } from '../report/approval-pdf.ts';
import { renderLabelsPdf } from '../report/labels-pdf.ts';
import { renderPlanPdf } from '../report/plan-pdf.ts';
import { renderReportPdf } from '../report/report-pdf.ts';
import { CommandProblem } from './command-problem.ts';

/** The application without a window, for one command. Leaves no trace in the person's list of recent notebooks. */
export interface CommandApplication {
  call<Name extends CallName>(name: Name, input: CallInput<Name>): Promise<CallOutput<Name>>;
  open(file: string): Promise<void>;
  /** Takes in another notebook; `null`: there was nothing new. `belongsHere`: a person has said that it belongs to this laboratory. */
  merge(file: string, belongsHere: boolean): Promise<MergeView | null>;
}

/**
 * Runs `work` on a fresh application and closes it, whatever happens.
 * @throws CommandProblem when a call is refused
 */
export async function withApplication(
  err: (text: string) => void,
  notebooksFolder: string,
  work: (application: CommandApplication) => Promise<number>,
): Promise<number> {
  const settingsFolder = await mkdtemp(path.join(tmpdir(), 'laydown-command-'));
  const application = new Application({
    clock: systemClock(),
    settingsFolder,
    notebooksFolder,
    version: 'command line',
    renderReport: renderReportPdf,
    renderPlan: renderPlanPdf,
    renderLabels: renderLabelsPdf,
    renderApproval: renderApprovalPdf,
    emit: (event) => {
      if (event.kind === 'trouble') err(event.text);
    },
  });
  try {
    return await work({
      async call<Name extends CallName>(name: Name, input: CallInput<Name>) {
        const answer = await application.call(name, input);
        if (!answer.ok) throw new CommandProblem(answer.problem.message, answer.problem.field);
        return answer.value as CallOutput<Name>;
      },
      async open(file) {
        const answer = await application.open(path.resolve(file));
        if (!answer.ok) throw new CommandProblem(answer.problem.message, answer.problem.field);
      },
      async merge(file, belongsHere) {
        const answer = await application.merge(path.resolve(file), belongsHere);
        if (!answer.ok) throw new CommandProblem(answer.problem.message, answer.problem.field);
        return answer.value as MergeView | null;
      },
    });
  } finally {
    await application.close();
    await rm(settingsFolder, { recursive: true, force: true });
  }
}
