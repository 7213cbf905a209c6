import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { addBatch, recordEnd } from '../../electron/store/record.ts';
import { Database, loadSqlite } from '../../electron/store/database.ts';
import { NotebookStore } from '../../electron/store/notebook-store.ts';
import { first } from '../../electron/store/schema/001-first.ts';
import { applicationId, schemaVersion } from '../../electron/store/schema/migrations.ts';
import { sealBatch } from '../../electron/store/seal-batch.ts';
import { verifyChain } from '../../shared-lib/notebook/hash-chain.ts';
import { oneOfEach } from '../unit/notebook/one-of-each.ts';
import { beginning, reading } from './drafts.ts';
import { temporaryFolder, testClock } from './temporary-notebook.ts';

/** A notebook as the first version of the program wrote it. */
async function schemaOneNotebook(path: string): Promise<void> {
  const database = new Database(await loadSqlite());
  database.transaction(() => database.script(`${first} PRAGMA application_id = ${applicationId}; PRAGMA user_version = 1`));
  const batch = sealBatch([...beginning, reading(1), reading(2, 40)], [], recordEnd(database), testClock());
  database.transaction(() => addBatch(database, batch));
  writeFileSync(path, database.export());
  database.close();
}

test('a notebook of schema 1 keeps its record and takes formulation trials, after a backup', async () => {
  const path = join(temporaryFolder(), 'old.laydown');
  await schemaOneNotebook(path);
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
  await schemaOneNotebook(path);
  const before = readFileSync(path);
  const writer = await NotebookStore.open(path, testClock());
  const reader = await NotebookStore.open(path, testClock());
  expect(reader.readOnly).not.toBe('');
  expect(reader.all('SELECT * FROM trial_set')).toEqual([]);
  reader.close();
  expect(readFileSync(path)).toEqual(before);
  writer.close();
});
