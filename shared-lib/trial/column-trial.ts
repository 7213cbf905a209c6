import type { TrialCell } from '../notebook/trial-views.ts';
import type { TrialReading } from './trial-reading.ts';

/** A trial as one column of the table sees it. */
export interface ColumnTrial {
  trialId: string;
  name: string;
  control: boolean;
  readings: TrialReading[];
  tests: TrialCell['tests'];
}
