import type { ApplicationEvent } from '../../shared-lib/api.ts';
import type { ReportContent } from '../../shared-lib/report/content.ts';
import type { ApprovalContent } from '../../shared-lib/report/approval-content.ts';
import type { LabelSize, SampleLabel } from '../../shared-lib/report/label-sheet.ts';
import type { PlanSheet } from '../../shared-lib/report/plan-sheet.ts';
import type { Clock } from '../store/clock.ts';

/** What the application is given by its host; nothing else of the outside world reaches it but the notebook's file. */
export interface Surroundings {
  clock: Clock;
  /** Folder of `settings.json`; made when it is missing. */
  settingsFolder: string;
  /** Folder that new notebooks go to; made when it is missing. */
  notebooksFolder: string;
  version: string;
  renderReport: (content: ReportContent) => Promise<Uint8Array>;
  renderPlan: (sheet: PlanSheet) => Promise<Uint8Array>;
  renderApproval: (content: ApprovalContent) => Promise<Uint8Array>;
  /** `skip`: labels of the first sheet that are used up. */
  renderLabels: (labels: SampleLabel[], size: LabelSize, skip: number) => Promise<Uint8Array>;
  emit: (event: ApplicationEvent) => void;
  /** For salts; left out: the system's. A demo, which is the same each time, gives its own. */
  randomBytes?: (count: number) => Uint8Array;
  timers?: Timers;
}

export interface Timers {
  /** Runs `action` once after `milliseconds`; the function returned calls it off. */
  after(milliseconds: number, action: () => void): () => void;
}

/** The system's timers; they never keep the process alive. */
export const systemTimers: Timers = {
  after(milliseconds, action) {
    const timer = setTimeout(action, milliseconds);
    timer.unref();
    return () => clearTimeout(timer);
  },
};
