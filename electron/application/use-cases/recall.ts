import { dayOf } from '../day-of.ts';
import { fileStem } from '../file-stem.ts';
import { csvText } from '../../exchange/csv-text.ts';
import type { RecallView } from '../../../shared-lib/notebook/material-views.ts';
import { lotName, lotPlaces } from '../queries/lots.ts';
import { approvalsOnLot, reportsOnLot, samplesOnLot, testIdsOnLot, trialsOnLot } from '../queries/recall.ts';
import { loadTest } from '../queries/tests.ts';
import { testLineOf } from '../test-line.ts';
import type { Workplace } from '../workplace.ts';
import { requireLot } from './lots.ts';

/** What stands on a lot: lots made from it, samples, tests, formulation trials, reports and approvals. */
export function recallLot(workplace: Workplace, { lotId }: { lotId: string }): RecallView {
  const { notebook } = workplace;
  const { store } = notebook;
  requireLot(workplace, lotId);
  return {
    lotId,
    lot: lotName(store, lotId),
    lots: lotPlaces(store, lotId, 'went into', dayOf(workplace.now())),
    samples: samplesOnLot(store, lotId),
    tests: testIdsOnLot(store, lotId).map((testId) => {
      const test = loadTest(store, testId);
      const { withdrawn, finished } = test;
      const { sampleCode, methodTitle, state, verdict } = testLineOf(notebook, test);
      return { testId, sampleCode, method: methodTitle, state: withdrawn ? 'withdrawn' : state, verdict, finishedOn: finished ? dayOf(finished.at) : '' };
    }),
    trials: trialsOnLot(store, lotId),
    reports: reportsOnLot(store, lotId),
    approvals: approvalsOnLot(store, lotId),
  };
}

/** The same as a table for a spreadsheet. */
export function recallCsv(workplace: Workplace, input: { lotId: string }): { fileName: string; bytes: string } {
  const { lot, lots, samples, tests, trials, reports, approvals } = recallLot(workplace, input);
  const rows = [
    ['what', 'name', 'belongs to', 'state', 'day'],
    ['lot asked about', lot, '', '', dayOf(workplace.now())],
    ...lots.filter(({ again }) => !again).map(({ name, doubt }) => ['lot made from it', name, '', doubt, '']),
    ...samples.map(({ code, product, job, roll, through, disposedOf }) => ['sample', code, [product, job, roll, through].filter(Boolean).join('; '), disposedOf ? 'disposed of' : 'kept', '']),
    ...tests.map(({ sampleCode, method, state, verdict, finishedOn }) => ['test', method, sampleCode, `${state}, ${verdict}`, finishedOn]),
    ...trials.map(({ name, set, by }) => ['trial', name, set, `by its ${by}`, '']),
    ...reports.map(({ number, title, recipient, issuedOn, replaced }) => ['report', number, [title, recipient].filter(Boolean).join('; '), replaced ? 'replaced' : 'in force', issuedOn]),
    ...approvals.map(({ title, customer, pressRun, state }) => ['press approval', title, [pressRun, customer].filter(Boolean).join('; '), state, '']),
  ];
  return { fileName: `recall-${fileStem(lot)}.csv`, bytes: Buffer.from(csvText(rows), 'utf8').toString('base64') };
}
