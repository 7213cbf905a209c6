import { copyFileSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import initSqlJs from 'sql.js';
import { describe, expect, test } from 'vitest';
import { NotebookStore } from '../../electron/store/notebook-store.ts';
import { verifyChain } from '../../shared-lib/notebook/hash-chain.ts';
import { attachment, reading } from './drafts.ts';
import { abandon, testClock } from './temporary-notebook.ts';
import { idsIn, merge, tablesIn, twoBenches } from './two-benches.ts';

describe('a merge in the store', () => {
  test('leaves the own chain as it is and seals the other one by its head', async () => {
    const { a, b } = await twoBenches();
    a.append([reading(1)]);
    const own = a.chainHash;
    b.append([reading(2), reading(3)]);
    const { runs } = merge(a, b);
    expect(runs).toEqual([{ bench: 'bench-b', forkSeq: 4, forkHash: [...a.entries(4, 4)][0]!.hash, head: b.chainHash, count: 2 }]);
    const entries = [...a.entries()];
    expect(entries.map(({ seq, sealedSeq }) => [seq, sealedSeq])).toEqual([[1, undefined], [2, undefined], [3, undefined], [4, undefined], [5, undefined], [6, 5], [7, 6], [8, undefined]]);
    expect(entries[7]!.previous).toBe(own);
    expect(entries[5]!.hash).toBe([...b.entries(5, 5)][0]!.hash);
    a.append([reading(4)]);
    expect(verifyChain(a.entries())).toEqual([]);
    for (const store of [a, b]) store.close();
  });

  test('is on the disk when it returns: what a kill leaves holds all of it, files as well', async () => {
    const { a, b, folder } = await twoBenches();
    const { draft, content } = attachment('0;1\n');
    b.append([draft, reading(2)], [content]);
    a.checkpoint();
    merge(a, b);
    const path = join(folder, 'killed.laydown');
    copyFileSync(a.path, path);
    copyFileSync(`${a.path}.journal`, `${path}.journal`);
    const again = await NotebookStore.open(path, testClock());
    expect(again.openingNotes[0]).toMatch(/^3 entries were brought in from the journal/);
    expect(idsIn(again)).toEqual(idsIn(a));
    expect(tablesIn(again)).toEqual(tablesIn(a));
    expect(again.attachment(content.sha256)).toEqual(content.bytes);
    again.checkpoint();
    // Killed between writing the file and clearing the journal: the batch is known.
    abandon(path);
    copyFileSync(`${a.path}.journal`, `${path}.journal`);
    const twice = await NotebookStore.open(path, testClock());
    expect(twice.openingNotes).toEqual([]);
    expect(verifyChain(twice.entries())).toEqual([]);
    for (const store of [a, b, again, twice]) store.close();
  });

  test('a journal cut inside the merge holds nothing of it', async () => {
    const { a, b, folder } = await twoBenches();
    const { draft, content } = attachment('0;1\n');
    b.append([draft, reading(2)], [content]);
    a.checkpoint();
    const before = idsIn(a);
    merge(a, b);
    const journal = readFileSync(`${a.path}.journal`);
    const path = join(folder, 'cut.laydown');
    copyFileSync(a.path, path);
    for (const length of [journal.length - 1, journal.length - 200, journal.indexOf(0x0a) + 1, 1]) {
      writeFileSync(`${path}.journal`, journal.subarray(0, length));
      const again = await NotebookStore.open(path, testClock());
      expect(idsIn(again)).toEqual(before);
      expect(verifyChain(again.entries())).toEqual([]);
      expect(again.tableDifferences()).toEqual([]);
      again.close();
      rmSync(`${path}.journal`, { force: true });
    }
    for (const store of [a, b]) store.close();
  });

  test('does not take back what a bench said after the word that an earlier merge took', async () => {
    const { a, b } = await twoBenches([reading(1)]);
    const row = { testId: 't1', row: 'r1' };
    const said = { by: 'p1', occurredAt: '2025-05-03T09:00:00.000Z' };
    a.append([{ kind: 'row.restored', body: { ...row, reason: 'it was row 2' }, ...said }]);
    b.append([{ kind: 'row.voided', body: { ...row, reason: 'touched by hand' }, ...said }]);
    expect(merge(a, b).conflicts).toMatchObject([{ taken: 'there' }]);
    b.append([{ kind: 'row.restored', body: { ...row, reason: 'it was not touched' }, ...said }]);
    expect(merge(b, a)).toMatchObject({ conflicts: [], again: [{}] });
    merge(a, b);
    for (const store of [a, b]) {
      expect(store.one('SELECT voided FROM bench_row WHERE "row" = ?', ['r1'])).toEqual({ voided: 0 });
      expect(store.tableDifferences()).toEqual([]);
      store.close();
    }
  });

  test('refuses an entry that both have but that says something else in each', async () => {
    const { a, b } = await twoBenches();
    const { Database } = await initSqlJs();
    b.checkpoint();
    const edited = new Database(readFileSync(b.path));
    edited.exec(`DROP TRIGGER entry_unchanged; UPDATE entry SET hash = '${'f'.repeat(64)}' WHERE seq = 4`);
    const path = join(b.path, '..', 'edited.laydown');
    writeFileSync(path, edited.export());
    const other = await NotebookStore.open(path, testClock());
    expect(() => merge(a, other)).toThrow('Entry 4 of this notebook and entry 4 of edited are one entry, but do not say the same');
    for (const store of [a, b, other]) store.close();
  });
});

describe('entries of another bench that somebody edited', () => {
  async function problemsAfter(sql: string): Promise<{ seq: number; kind: string }[]> {
    const { a, b } = await twoBenches();
    a.append([reading(1)]);
    b.append([reading(2), reading(3), reading(4)]);
    merge(a, b);
    a.append([reading(5)]);
    for (const store of [a, b]) store.close();
    const { Database } = await initSqlJs();
    const database = new Database(readFileSync(a.path));
    database.exec(`DROP TRIGGER entry_unchanged; DROP TRIGGER entry_kept; DROP TRIGGER entry_in_order; ${sql}`);
    writeFileSync(a.path, database.export());
    database.close();
    const again = await NotebookStore.open(a.path, testClock());
    const problems = verifyChain(again.entries()).map(({ seq, kind }) => ({ seq, kind }));
    again.close();
    return problems;
  }

  // Own entries 1–5, of bench B 6–8, the merge 9, an own one 10.
  test.each([
    ['nothing', '', []],
    ['its content', `UPDATE entry SET body = replace(body, '38', '44') WHERE seq = 7`, [{ seq: 7, kind: 'content' }]],
    ['its place there', 'UPDATE entry SET sealedSeq = 9 WHERE seq = 7', [{ seq: 7, kind: 'content' }]],
    ['one taken away', 'DELETE FROM entry WHERE seq = 7', [{ seq: 8, kind: 'order' }, { seq: 9, kind: 'order' }]],
    ['the last taken away', 'DELETE FROM entry WHERE seq = 8', [{ seq: 9, kind: 'order' }, { seq: 9, kind: 'order' }]],
    ['two of them changed about', 'UPDATE entry SET seq = 60 WHERE seq = 7; UPDATE entry SET seq = 7 WHERE seq = 6; UPDATE entry SET seq = 6 WHERE seq = 60', [{ seq: 6, kind: 'link' }, { seq: 7, kind: 'link' }, { seq: 8, kind: 'link' }]],
    ['passed off as an own one', 'UPDATE entry SET sealedSeq = NULL WHERE seq = 8', [{ seq: 8, kind: 'content' }, { seq: 8, kind: 'link' }, { seq: 6, kind: 'link' }, { seq: 9, kind: 'link' }, { seq: 9, kind: 'order' }]],
    ['an own one passed off as theirs', 'UPDATE entry SET sealedSeq = 10 WHERE seq = 10', [{ seq: 10, kind: 'link' }]],
    ['the merge taken away', 'DELETE FROM entry WHERE seq >= 9', [{ seq: 6, kind: 'link' }]],
  ])('%s: is named', async (_what, sql, problems) => {
    expect(await problemsAfter(sql)).toEqual(problems);
  });
});
