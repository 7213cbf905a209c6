import { readFileSync, writeFileSync } from 'node:fs';
import initSqlJs from 'sql.js';
import { expect, test } from 'vitest';
import { NotebookStore } from '../../electron/store/notebook-store.ts';
import { verifyChain } from '../../shared-lib/notebook/hash-chain.ts';
import { newNotebook, testClock } from './temporary-notebook.ts';

/** What somebody with a SQLite tool may do to a notebook. */
async function editedByHand(sql: string): Promise<NotebookStore> {
  const { path, store } = await newNotebook(10);
  store.close();
  const { Database } = await initSqlJs();
  const db = new Database(readFileSync(path));
  db.exec(sql);
  writeFileSync(path, db.export());
  db.close();
  return NotebookStore.open(path, testClock());
}

const unguarded = 'DROP TRIGGER entry_unchanged; DROP TRIGGER entry_kept; DROP TRIGGER entry_in_order;';

test('the record refuses to be changed, shortened or filled in by SQL', async () => {
  for (const sql of [
    `UPDATE entry SET body = replace(body, '38', '44') WHERE seq = 8`,
    'DELETE FROM entry WHERE seq = 14',
    `INSERT OR REPLACE INTO entry SELECT seq, id, kind, 'x', "by", occurredAt, recordedAt, previous, hash, sealedSeq FROM entry WHERE seq = 8`,
  ]) {
    await expect(editedByHand(sql), sql).rejects.toThrow(/An entry/);
  }
});

test('an entry changed by hand is named, and so is the table that no longer follows from it', async () => {
  const store = await editedByHand(`${unguarded} UPDATE entry SET body = replace(body, '38', '44') WHERE seq = 8`);
  expect(verifyChain(store.entries())).toEqual([{ seq: 8, kind: 'content', text: expect.stringMatching(/^Entry 8 \(reading\.entered/) as string }]);
  const differences = store.tableDifferences();
  expect(differences).toContain('Table reading, t1 r4 tensionMNm: value is 38, but the record says 44.');
  store.close();
});

test('an entry removed from the middle is named', async () => {
  const store = await editedByHand(`${unguarded} DELETE FROM entry WHERE seq = 8`);
  expect(verifyChain(store.entries()).map(({ seq, kind }) => [seq, kind])).toEqual([[9, 'order'], [9, 'link']]);
  store.close();
});

test('an entry that is no JSON any more is named', async () => {
  const store = await editedByHand(`${unguarded} UPDATE entry SET body = '{broken' WHERE seq = 8`);
  expect(verifyChain(store.entries()).map(({ seq }) => seq)).toEqual([8]);
  expect(store.tableDifferences()[0]).toBe('Entry 8 (reading.entered) cannot be read any more.');
  store.close();
});

test('a reading changed, added or removed in its table alone is named; the record stays intact and mends the tables', async () => {
  const store = await editedByHand(`
    UPDATE reading SET value = 44 WHERE "row" = 'r3';
    DELETE FROM reading WHERE "row" = 'r5';
    INSERT INTO reading VALUES ('t1', 'r6', 'other', 1, '1', 0, 9)`);
  expect(verifyChain(store.entries())).toEqual([]);
  expect(store.tableDifferences()).toEqual([
    'Table reading, t1 r3 tensionMNm: value is 44, but the record says 38.',
    'Table reading, t1 r6 other: no entry of the record adds it.',
    'Table reading, t1 r5 tensionMNm: it is missing, but the record adds it.',
  ]);
  store.rebuild();
  store.close();
  const mended = await NotebookStore.open(store.path, testClock());
  expect(mended.tableDifferences()).toEqual([]);
  mended.close();
});
