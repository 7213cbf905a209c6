import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { existsSync, readFileSync, rmSync, utimesSync, writeFileSync } from 'node:fs';
import { hostname } from 'node:os';
import { describe, expect, test } from 'vitest';
import { Lock } from '../../electron/store/lock.ts';
import { NotebookStore } from '../../electron/store/notebook-store.ts';
import { reading } from './drafts.ts';
import { newNotebook, temporaryFolder, testClock } from './temporary-notebook.ts';

const holder = (change: object) => JSON.stringify({ pid: process.pid, start: '', host: hostname(), since: '2025-05-03T08:00:00.000Z', token: 'other', ...change });

describe('a second opener', () => {
  test('may only read, is told why, and sees what has been recorded', async () => {
    const { path, store } = await newNotebook(3);
    const second = await NotebookStore.open(path, testClock());
    expect(second.readOnly).toMatch(/already open for writing on this computer/);
    expect(second.openingNotes).toEqual([]);
    expect(second.entryCount).toBe(store.entryCount);
    expect(second.chainHash).toBe(store.chainHash);
    expect(() => second.append([reading(4)])).toThrow(expect.objectContaining({ code: 'read-only', message: second.readOnly }) as Error);
    expect(second.checkpoint()).toEqual({ wrote: false, notes: [] });
    second.close();
    store.append([reading(4)]); // the reader's leaving did not take the lock away
    store.close();
    const third = await NotebookStore.open(path, testClock());
    expect([third.readOnly, third.entryCount]).toEqual(['', 8]);
    third.close();
  });

  test('sees everything when the writer wrote the file in between', async () => {
    const { path, store } = await newNotebook(3);
    store.checkpoint();
    store.append([reading(4)]);
    const second = await NotebookStore.open(path, testClock());
    expect(second.entryCount).toBe(8);
    second.close();
    store.close();
  });
});

describe('a lock that was left behind', () => {
  test('by a process that runs no longer is taken over', async () => {
    const { path, store } = await newNotebook(1);
    store.close();
    const child = spawn(process.execPath, ['-e', '']);
    await once(child, 'exit');
    writeFileSync(`${path}.lock`, holder({ pid: child.pid }));
    const again = await NotebookStore.open(path, testClock());
    expect(again.readOnly).toBe('');
    again.close();
    expect(existsSync(`${path}.lock`)).toBe(false);
  });

  test.runIf(process.platform === 'linux')('by an earlier process whose number another one has now is taken over', async () => {
    const { path, store } = await newNotebook(1);
    store.close();
    writeFileSync(`${path}.lock`, holder({ start: 'an earlier boot 1' }));
    const again = await NotebookStore.open(path, testClock());
    expect(again.readOnly).toBe('');
    again.close();
  });

  test('by another computer is respected, and the person is told what to do', async () => {
    const { path, store } = await newNotebook(1);
    store.close();
    writeFileSync(`${path}.lock`, holder({ host: 'press-room-3', pid: 1 }));
    const again = await NotebookStore.open(path, testClock());
    expect(again.readOnly).toMatch(/on the computer press-room-3 .* remove the file .*lab\.laydown\.lock/);
    again.close();
    expect(readFileSync(`${path}.lock`, 'utf8')).toContain('press-room-3');
  });

  test('half written is respected for a minute', async () => {
    const { path, store } = await newNotebook(1);
    store.close();
    writeFileSync(`${path}.lock`, '{"pid":');
    const clock = testClock();
    clock.at = new Date();
    const early = await NotebookStore.open(path, clock);
    expect(early.readOnly).toMatch(/Another program/);
    early.close();
    utimesSync(`${path}.lock`, new Date(Date.now() - 90_000), new Date(Date.now() - 90_000));
    const late = await NotebookStore.open(path, clock);
    expect(late.readOnly).toBe('');
    late.close();
  });
});

test('a writer whose lock was taken by hand stops, and keeps what it has under another name', async () => {
  const { path, store } = await newNotebook(2);
  rmSync(`${path}.lock`);
  const other = await NotebookStore.open(path, testClock());
  expect(other.readOnly).toBe('');
  const before = readFileSync(`${path}.journal`);
  expect(() => store.append([reading(3)])).toThrow(expect.objectContaining({ code: 'changed-outside' }) as Error);
  expect(readFileSync(`${path}.journal`)).toEqual(before);
  const kept = /kept as (lab kept \w+\.laydown)/.exec(store.readOnly)![1]!;
  store.close();
  other.append([reading(3)]);
  other.close();
  const copy = await NotebookStore.open(path.replace('lab.laydown', kept), testClock());
  expect(copy.entryCount).toBe(6);
  copy.close();
});

test('a writer whose lock was taken by hand does not remove the journal of the one who has it now', async () => {
  const { path, store } = await newNotebook(2);
  store.checkpoint(); // its own journal is empty
  rmSync(`${path}.lock`);
  const other = await NotebookStore.open(path, testClock());
  other.append([reading(3)]);
  store.close();
  const reader = await NotebookStore.open(path, testClock());
  expect([reader.readOnly === '', reader.entryCount]).toEqual([false, 7]);
  reader.close();
  other.close();
});

test('only one of many takers of a stale lock gets it', () => {
  const path = `${temporaryFolder()}/lock`;
  writeFileSync(path, holder({ start: 'an earlier boot 1' }));
  const taken = Array.from({ length: 20 }, (_, index) => Lock.take(path, new Date(), `t${index}`)).filter((lock) => lock instanceof Lock);
  expect(taken).toHaveLength(1);
  expect(taken[0]!.isHeld()).toBe(true);
});
