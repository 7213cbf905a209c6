import type { DueKind } from '../../shared-lib/notebook/today-view.ts';

/** What is due, as it is counted on Today. */
export const dueWords: Record<DueKind, string> = {
  test: 'Running or outdated tests',
  'follow-up': 'Asked for by results',
  plan: 'Asked for by plans',
  treatment: 'Treatment to test again',
  approval: 'Press approvals',
  instrument: 'Calibrations',
  fluid: 'Test fluids, tapes, standards',
  lot: 'Lots that expire',
  sample: 'Samples kept long enough',
};
