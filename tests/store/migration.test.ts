import { copyFileSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import initSqlJs from 'sql.js';
import { expect, test } from 'vitest';
import { NotebookStore } from '../../electron/store/notebook-store.ts';
import { mentions as step } from '../../electron/store/schema/013-mentions.ts';
import { schemaVersion } from '../../electron/store/schema/migrations.ts';
import { verifyChain } from '../../shared-lib/notebook/hash-chain.ts';
import { oneOfEach } from '../unit/notebook/one-of-each.ts';
import { beginning } from './drafts.ts';
import { temporaryFolder, testClock } from './temporary-notebook.ts';

/** A notebook as that version of the program wrote it. */
function earlierNotebook(schema: number, path: string): void {
  copyFileSync(join(import.meta.dirname, 'earlier-notebooks', `schema-${schema}.sqlite`), path);
}

test('a notebook of schema 1 keeps its record and takes formulation trials, after a backup', async () => {
  const path = join(temporaryFolder(), 'old.laydown');
  earlierNotebook(1, path);
  const before = readFileSync(path);
  expect(before.readUInt32BE(60)).toBe(1);

  const store = await NotebookStore.open(path, testClock());
  expect(store.entryCount).toBe(beginning.length + 2);
  expect(verifyChain(store.entries())).toEqual([]);
  expect(store.tableDifferences()).toEqual([]);
  expect(store.all('SELECT value FROM reading ORDER BY "row"')).toEqual([{ value: 38 }, { value: 40 }]);
  const trials = oneOfEach.filter(({ kind }) => ['trialSet.added', 'responses.set', 'factors.set', 'trial.changed', 'sample.linked', 'study.recorded'].includes(kind));
  const added = oneOfEach.find(({ kind }) => kind === 'trial.added')!;
  store.append([...trials.slice(0, 3), added, ...trials.slice(3)]);
  expect(store.tableDifferences()).toEqual([]);
  store.close();

  expect(readFileSync(join(`${path}.backups`, 'old-schema-1.laydown'))).toEqual(before);
  expect(readFileSync(path).readUInt32BE(60)).toBe(schemaVersion);
  const again = await NotebookStore.open(path, testClock());
  expect(again.one('SELECT title FROM trial_set')).toEqual({ title: 'Low-migration inks' });
  expect(again.one('SELECT sampleId FROM trial_sample')).toEqual({ sampleId: 's1' });
  again.close();
});

test('a notebook of schema 1 that can only be read is shown, and its file left alone', async () => {
  const path = join(temporaryFolder(), 'old.laydown');
  earlierNotebook(1, path);
  const before = readFileSync(path);
  const writer = await NotebookStore.open(path, testClock());
  const reader = await NotebookStore.open(path, testClock());
  expect(reader.readOnly).not.toBe('');
  expect(reader.all('SELECT * FROM trial_set')).toEqual([]);
  reader.close();
  expect(readFileSync(path)).toEqual(before);
  writer.close();
});

test('a notebook of schema 2 keeps record and tables, and its record is found by its words', async () => {
  const path = join(temporaryFolder(), 'old.laydown');
  earlierNotebook(2, path);
  const store = await NotebookStore.open(path, testClock());
  expect(verifyChain(store.entries())).toEqual([]);
  expect(store.tableDifferences()).toEqual([]);
  const found = (words: string) => store.all('SELECT docid FROM entry_words WHERE words MATCH ?', [words]).length;
  expect(found('"low migration inks"')).toBeGreaterThan(0);
  expect(found('misread')).toBeGreaterThan(0);
  expect(found('t1')).toBe(0); // the id of a test
  store.close();
});

test('a notebook of schema 1 takes structures, genealogy, instruments and test fluids; what it had is not said otherwise', async () => {
  const path = join(temporaryFolder(), 'old.laydown');
  earlierNotebook(1, path);
  const store = await NotebookStore.open(path, testClock());
  expect(store.all('SELECT DISTINCT customer, acrossMm, retainedUntil FROM sample')).toEqual([{ customer: '', acrossMm: null, retainedUntil: null }]);
  store.append(oneOfEach.filter(({ kind }) => /^(material|lot|sample|instrument|calibration|fluid)\./.test(kind) && !/^sample\.(added|linked|unlinked)$/.test(kind)));
  expect(store.tableDifferences()).toEqual([]);
  expect(store.all('SELECT lotId, partId FROM lot_part')).toEqual([{ lotId: 'l1', partId: 'l1' }]);
  expect(store.one('SELECT serial, retiredAt FROM instrument')).toEqual({ serial: 'SD-2208', retiredAt: null });
  store.close();
});

test('a notebook from before there were plans takes them, and every table follows from its record', async () => {
  const path = join(temporaryFolder(), 'old.laydown');
  earlierNotebook(2, path);
  const store = await NotebookStore.open(path, testClock());
  const ofPlans = oneOfEach.filter(({ kind }) => ['plan.added', 'plan.versioned', 'plan.followed', 'planLine.tested'].includes(kind));
  store.append(ofPlans);
  store.close();
  const again = await NotebookStore.open(path, testClock());
  expect(again.one('SELECT title, version FROM plan')).toEqual({ title: 'Frozen dumpling pouch', version: '2' });
  expect(again.one('SELECT sampleId, version, printedAt FROM followed_plan')).toEqual({ sampleId: 's1', version: '1', printedAt: '2025-05-02T09:30:00.000Z' });
  expect(again.one('SELECT testId, replicates FROM planned_test')).toEqual({ testId: 't1', replicates: 3 });
  expect(again.tableDifferences()).toEqual([]);
  again.close();
});

test('a notebook from before it said what its entries speak of says the same as one that said so from the first', async () => {
  const path = join(temporaryFolder(), 'old.laydown');
  // Ids as the application makes them.
  const withUlids = JSON.stringify(oneOfEach).replace(/(Id":|by":|Ids":\[|"before":\[)"([a-z]+\d)"/g, (_id, key: string, id: string) => `${key}"${id.toUpperCase().padStart(26, '0')}"`);
  const said = JSON.parse(withUlids) as typeof oneOfEach;
  const store = await NotebookStore.create(path, testClock());
  store.append(said.filter(({ kind }) => !/^(attachment|trace|photo|spectrum|report|approval|conflict|notebook\.merged)/.test(kind)));
  const mentions = 'SELECT * FROM entry_mention ORDER BY thing, seq';
  const before = store.all(mentions);
  expect(before.length).toBeGreaterThan(50);
  store.close();

  const { Database } = await initSqlJs();
  const database = new Database(readFileSync(path));
  // The step itself: later ones may stand in the file already.
  database.exec(`DROP TABLE entry_mention; ${step}`);
  writeFileSync(path, database.export());
  database.close();
  const again = await NotebookStore.open(path, testClock());
  expect(again.all(mentions)).toEqual(before);
  expect(again.tableDifferences()).toEqual([]);
  again.close();
});
