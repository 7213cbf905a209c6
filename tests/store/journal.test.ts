import { execFileSync } from 'node:child_process';
import { appendFileSync, copyFileSync, existsSync, readdirSync, readFileSync, rmSync, symlinkSync, truncateSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { readJournal } from '../../electron/store/journal.ts';
import { NotebookStore } from '../../electron/store/notebook-store.ts';
import { verifyChain } from '../../shared-lib/notebook/hash-chain.ts';
import { attachment, reading } from './drafts.ts';
import { abandon, newNotebook, testClock } from './temporary-notebook.ts';

/** Opens what a killed program left, says what was found, and checks that it can go on and come back. */
async function reopened(path: string) {
  const store = await NotebookStore.open(path, testClock());
  expect(store.readOnly).toBe('');
  const found = { entries: store.entryCount, notes: [...store.openingNotes] };
  expect(verifyChain(store.entries())).toEqual([]);
  store.append([reading(99)]);
  store.close();
  const again = await NotebookStore.open(path, testClock());
  expect(again.entryCount).toBe(found.entries + 1);
  expect(again.openingNotes).toEqual([]);
  expect(verifyChain(again.entries())).toEqual([]);
  expect(again.tableDifferences()).toEqual([]);
  again.close();
  return found;
}

/** A notebook that was killed: the beginning (4 entries) in the file, `readings` more only in the journal. */
async function killed(readings: number): Promise<string> {
  const { path, store } = await newNotebook();
  store.checkpoint();
  for (let number = 1; number <= readings; number++) store.append([reading(number)]);
  abandon(path);
  return path;
}

const keptJournals = (path: string) => readdirSync(dirname(path)).filter((name) => name.includes('journal-kept'));

describe('after a kill', () => {
  test('what was only in the journal is brought in, and said', async () => {
    const path = await killed(3);
    expect(await reopened(path)).toEqual({ entries: 7, notes: [expect.stringMatching(/^3 entries were brought in/)] });
  });

  test('a file written but a journal not yet cleared brings nothing in twice', async () => {
    const { path, store } = await newNotebook(3);
    const journal = readFileSync(`${path}.journal`);
    store.checkpoint();
    abandon(path);
    writeFileSync(`${path}.journal`, journal);
    expect(await reopened(path)).toEqual({ entries: 7, notes: [] });
  });

  test('the same with entries that came after', async () => {
    const { path, store } = await newNotebook(3);
    const before = readFileSync(`${path}.journal`);
    store.checkpoint();
    store.append([reading(4)]);
    const after = readFileSync(`${path}.journal`);
    abandon(path);
    writeFileSync(`${path}.journal`, Buffer.concat([before, after]));
    expect((await reopened(path)).entries).toBe(8);
  });

  test.each(['', 'SQLite format 3\0 half'])('a half-written next file (%j) is thrown away', async (content) => {
    const path = await killed(2);
    writeFileSync(`${path}.writing`, content);
    expect((await reopened(path)).entries).toBe(6);
    expect(existsSync(`${path}.writing`)).toBe(false);
  });

  test('every length at which the last line may be torn loses that line alone, and says so', async () => {
    const path = await killed(3);
    const file = readFileSync(path);
    const journal = readFileSync(`${path}.journal`);
    const lastLine = journal.lastIndexOf(0x0a, journal.length - 2) + 1;
    for (const cut of [1, 2, 30, journal.length - lastLine - 65, journal.length - lastLine - 1]) {
      writeFileSync(path, file);
      writeFileSync(`${path}.journal`, journal.subarray(0, journal.length - cut));
      const { entries, notes } = await reopened(path);
      expect(entries, `cut by ${cut}`).toBe(6);
      expect(notes[1]).toMatch(/unfinished line .* dropped/);
    }
  });

  test('a tail of zeros, as some disks leave after a power failure, is an unfinished line', async () => {
    const path = await killed(2);
    appendFileSync(`${path}.journal`, Buffer.alloc(4096));
    expect((await reopened(path)).entries).toBe(6);
  });
});

describe('a journal that does not fit is kept aside whole', () => {
  test('when a line in the middle is damaged; what comes before it is brought in', async () => {
    const path = await killed(4);
    const journal = readFileSync(`${path}.journal`);
    journal[journal.indexOf(0x0a) + 100]! ^= 1; // one bit of the second line
    writeFileSync(`${path}.journal`, journal);
    const { entries, notes } = await reopened(path);
    expect(entries).toBe(5);
    expect(notes.join(' ')).toMatch(/line 2 of the journal is damaged.* kept as lab\.laydown\.journal-kept-/);
    expect(keptJournals(path)).toHaveLength(1);
    expect(readFileSync(join(dirname(path), keptJournals(path)[0]!))).toEqual(journal);
  });

  test('when it belongs to a later state than the file, as after an older copy was put back', async () => {
    const { path, store } = await newNotebook();
    store.checkpoint();
    copyFileSync(path, `${path}.old`);
    store.append([reading(1)]);
    store.checkpoint();
    store.append([reading(2)]);
    abandon(path);
    copyFileSync(`${path}.old`, path);
    const { entries, notes } = await reopened(path);
    expect(entries).toBe(4);
    expect(notes.join(' ')).toMatch(/entry 6 of the journal does not follow on entry 4 of the file/);
    expect(keptJournals(path)).toHaveLength(1);
  });

  test('when it is the journal of another notebook', async () => {
    const path = await killed(2);
    const other = await killed(5);
    copyFileSync(`${other}.journal`, `${path}.journal`);
    expect((await reopened(path)).entries).toBe(4);
    expect(keptJournals(path)).toHaveLength(1);
  });

  test('when a notebook is made where an old one left its journal', async () => {
    const path = await killed(2);
    const journal = readFileSync(`${path}.journal`);
    rmSync(path);
    const store = await NotebookStore.create(path, testClock());
    expect([store.entryCount, store.openingNotes[0]]).toEqual([0, expect.stringMatching(/earlier notebook/)]);
    store.close();
    expect(readFileSync(join(dirname(path), keptJournals(path)[0]!))).toEqual(journal);
  });
});

test('a batch is one line: it comes back whole or not at all, attachments included', async () => {
  const path = await killed(0);
  const store = await NotebookStore.open(path, testClock());
  const { draft, content } = attachment('0;1\n'.repeat(1000));
  store.append([reading(1), draft, reading(2)], [content]);
  const { batches } = readJournal(`${path}.journal`);
  expect(batches.map(({ entries }) => entries.length)).toEqual([3]);
  abandon(path);
  truncateSync(`${path}.journal`, readFileSync(`${path}.journal`).length - 1);
  expect((await reopened(path)).entries).toBe(4);
});

test('a SQLite tool that opens the notebook does not take the journal for its own', async (context) => {
  // SQLite deletes a FILE-journal that it did not write: https://www.sqlite.org/lockingv3.html, section 4 (hot journals).
  const path = await killed(2);
  const script = `import sqlite3, sys; c = sqlite3.connect(sys.argv[1]); print(c.execute('select count(*) from entry').fetchone()[0]); c.close()`;
  let printed: string;
  try {
    printed = execFileSync('python3', ['-c', script, path], { encoding: 'utf8', stdio: ['ignore', 'pipe', 'ignore'] });
  } catch {
    return context.skip('no python3 with sqlite3 here');
  }
  expect(printed.trim()).toBe('4');
  expect((await reopened(path)).entries).toBe(6);
});

test('something else in the place of the journal is refused, not read without end', async () => {
  const { path, store } = await newNotebook();
  store.close();
  symlinkSync('/dev/zero', `${path}.journal`);
  await expect(NotebookStore.open(path, testClock())).rejects.toMatchObject({ message: expect.stringMatching(/should be a file/) as string });
});
