import { copyFileSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import initSqlJs from 'sql.js';
import { expect, test } from 'vitest';
import { NotebookStore } from '../../electron/store/notebook-store.ts';
import { pressRuns as step } from '../../electron/store/schema/016-press-runs.ts';
import { oneOfEach } from '../unit/notebook/one-of-each.ts';
import { temporaryFolder, testClock } from './temporary-notebook.ts';

/** A copy of one that an earlier version of the program wrote. */
function earlierNotebook(): string {
  const path = join(temporaryFolder(), 'old.laydown');
  copyFileSync(join(import.meta.dirname, 'earlier-notebooks', 'schema-2.sqlite'), path);
  return path;
}

test('a notebook from before takes plans and press approvals, and its tables follow from its record', async () => {
  const path = earlierNotebook();
  const store = await NotebookStore.open(path, testClock());
  expect(store.all('SELECT * FROM approval')).toEqual([]);
  const attachment = oneOfEach.find(({ kind }) => kind === 'attachment.added')!;
  const approvals = oneOfEach.filter(({ kind }) => kind === 'plan.added' || kind.startsWith('approval'));
  store.append([attachment, ...approvals.filter(({ kind }) => kind !== 'approvalLine.dropped')]);
  expect(store.tableDifferences()).toEqual([]);
  store.close();

  const again = await NotebookStore.open(path, testClock());
  expect(again.one('SELECT job, version, signedBy, withdrawnReason, replacedBy FROM approval')).toEqual({ job: 'J-4418', version: '1', signedBy: 'p1', withdrawnReason: 'complaint', replacedBy: 'ap1' });
  expect(again.all('SELECT lineId, title, testId, finishedId, inOrder, waivedOf FROM approval_line ORDER BY lineId')).toEqual([
    { lineId: 'al1', title: 'Barcode reads', testId: null, finishedId: null, inOrder: 1, waivedOf: null },
    { lineId: 'lamination-bond lamination+168', title: '', testId: null, finishedId: null, inOrder: null, waivedOf: 'undecided' },
    { lineId: 'tape-adhesion printing+24', title: '', testId: 't1', finishedId: 'e1', inOrder: null, waivedOf: null },
  ]);
  again.append(approvals.filter(({ kind }) => kind === 'approvalLine.dropped'));
  expect(again.all("SELECT * FROM approval_line WHERE lineId = 'al1'")).toEqual([]);
  expect(again.tableDifferences()).toEqual([]);
  again.close();
});

test('whatever fills a line anew ends its waiver', async () => {
  const store = await NotebookStore.open(earlierNotebook(), testClock());
  const draft = (kind: string) => oneOfEach.find((one) => one.kind === kind)!;
  const linked = draft('approvalLine.linked');
  const waived = draft('approvalLine.waived');
  const onSameLine = { ...waived, body: { ...waived.body, lineId: 'tape-adhesion printing+24' } } as typeof waived;
  const state = () => store.one("SELECT testId, waivedOf, waivedBy FROM approval_line WHERE lineId = 'tape-adhesion printing+24'");
  store.append([draft('plan.added'), draft('approval.drafted'), onSameLine]);
  expect(state()).toEqual({ testId: null, waivedOf: 'undecided', waivedBy: 'p1' });
  store.append([linked]);
  expect(state()).toEqual({ testId: 't1', waivedOf: null, waivedBy: null });
  expect(store.tableDifferences()).toEqual([]);
  store.close();
});

test('a notebook from before it kept every result that ever filled a line keeps the same from its record', async () => {
  const path = earlierNotebook();
  const store = await NotebookStore.open(path, testClock());
  const draft = (kind: string) => oneOfEach.find((one) => one.kind === kind)!;
  const linked = draft('approvalLine.linked');
  const onAddedLine = { ...linked, body: { ...linked.body, lineId: 'al1' } } as typeof linked;
  store.append([draft('plan.added'), draft('approval.drafted'), draft('approvalLine.added'), onAddedLine, linked, linked, draft('approvalLine.dropped'), draft('approvalLine.observed')]);
  const links = 'SELECT * FROM approval_link';
  const before = store.all(links);
  // The result of the line that was dropped is gone with it.
  expect(before).toEqual([{ approvalId: 'ap1', lineId: 'tape-adhesion printing+24', testId: 't1', seq: expect.any(Number) as number }]);
  expect(store.all('SELECT samplesSaid FROM approval')).toEqual([{ samplesSaid: 0 }]);
  store.close();

  const { Database } = await initSqlJs();
  const database = new Database(readFileSync(path));
  // The step itself: later ones may stand in the file already.
  database.exec(`DROP TABLE approval_link; DROP TABLE approval_sample; ALTER TABLE approval DROP COLUMN samplesSaid; ${step}`);
  writeFileSync(path, database.export());
  database.close();
  const again = await NotebookStore.open(path, testClock());
  expect(again.all(links)).toEqual(before);
  expect(again.tableDifferences()).toEqual([]);
  again.close();
});
