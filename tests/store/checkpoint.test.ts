import { execFileSync } from 'node:child_process';
import { appendFileSync, chmodSync, copyFileSync, lstatSync, mkdirSync, readdirSync, readFileSync, rmSync, statfsSync, statSync, symlinkSync, utimesSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, onTestFinished, test } from 'vitest';
import { NotebookStore } from '../../electron/store/notebook-store.ts';
import { verifyChain } from '../../shared-lib/notebook/hash-chain.ts';
import { attachment, beginning, reading } from './drafts.ts';
import { newNotebook, temporaryFolder, testClock } from './temporary-notebook.ts';

describe('a checkpoint', () => {
  test('writes a plain notebook file, clears the journal, and does nothing when there is nothing to write', async () => {
    const { path, store } = await newNotebook(3);
    expect(store.checkpoint()).toEqual({ wrote: true, notes: [] });
    expect(statSync(`${path}.journal`).size).toBe(0);
    expect(store.checkpoint()).toEqual({ wrote: false, notes: [] });
    expect(readFileSync(path).subarray(0, 15).toString()).toBe('SQLite format 3');
    store.close();
  });

  test('keeps the permissions of the file', async () => {
    const { path, store } = await newNotebook();
    store.close();
    chmodSync(path, 0o640);
    const again = await NotebookStore.open(path, testClock());
    again.append([reading(1)]);
    expect(statSync(`${path}.journal`).mode & 0o777 & ~0o640).toBe(0);
    again.close();
    expect(statSync(path).mode & 0o777).toBe(0o640);
  });

  test('writes through a symbolic link, and locks the file behind it', async () => {
    const { path, store, folder } = await newNotebook();
    store.close();
    const link = join(temporaryFolder(), 'link.laydown');
    symlinkSync(path, link);
    const linked = await NotebookStore.open(link, testClock());
    const direct = await NotebookStore.open(path, testClock());
    expect([linked.readOnly, direct.readOnly === '']).toEqual(['', false]);
    direct.close();
    linked.append([reading(1)]);
    linked.close();
    expect(lstatSync(link).isSymbolicLink()).toBe(true);
    expect(readdirSync(folder).sort()).toEqual(['lab.laydown', 'lab.laydown.backups']);
    const again = await NotebookStore.open(path, testClock());
    expect(again.entryCount).toBe(5);
    again.close();
  });
});

describe('a file that somebody else changed', () => {
  test('is not overwritten: ours is kept under another name, the journal stays', async () => {
    const { path, store, folder } = await newNotebook(2);
    store.checkpoint();
    store.append([reading(3)]);
    appendFileSync(path, 'x');
    const theirs = readFileSync(path);
    const journal = readFileSync(`${path}.journal`);
    expect(() => store.checkpoint()).toThrow(expect.objectContaining({ code: 'changed-outside', message: expect.stringMatching(/Nothing was overwritten/) as string }) as Error);
    expect(store.readOnly).toMatch(/kept as/);
    store.close();
    expect(readFileSync(path)).toEqual(theirs);
    expect(readFileSync(`${path}.journal`)).toEqual(journal);
    const kept = readdirSync(folder).find((name) => name.startsWith('lab kept '))!;
    const copy = await NotebookStore.open(join(folder, kept), testClock());
    expect(copy.entryCount).toBe(7);
    expect(verifyChain(copy.entries())).toEqual([]);
    copy.close();
  });

  test('is noticed also when size and time are the same', async () => {
    const { path, store } = await newNotebook(2);
    store.checkpoint();
    store.append([reading(3)]);
    const { atime, mtime } = statSync(path);
    const bytes = readFileSync(path);
    bytes[bytes.length - 1]! ^= 1;
    rmSync(path);
    writeFileSync(path, bytes); // as a sync service does: a new file of the same name
    utimesSync(path, atime, mtime);
    expect(() => store.checkpoint()).toThrow(/changed by another program/);
    store.close();
  });

  test('but was only touched or copied in place is written as usual', async () => {
    const { path, store } = await newNotebook(2);
    store.checkpoint();
    store.append([reading(3)]);
    utimesSync(path, new Date(), new Date());
    copyFileSync(path, `${path}.copy`);
    rmSync(path);
    copyFileSync(`${path}.copy`, path);
    expect(store.checkpoint().wrote).toBe(true);
    store.close();
  });

  test('and is gone is written anew, and said', async () => {
    const { path, store } = await newNotebook(2);
    rmSync(path);
    expect(store.checkpoint()).toEqual({ wrote: true, notes: ['lab.laydown was no longer there; it was written anew.'] });
    store.close();
    const again = await NotebookStore.open(path, testClock());
    expect(again.entryCount).toBe(6);
    again.close();
  });
});

describe('backups', () => {
  test('hold the file as it was at the first checkpoint of each day; the last ten are kept', async () => {
    const { path, store, clock } = await newNotebook();
    store.checkpoint();
    const names: string[] = [];
    for (let day = 4; day <= 16; day++) {
      clock.at = new Date(Date.UTC(2025, 4, day, 8));
      names.push(`lab-${clock.at.toISOString().slice(0, 10)}.laydown`);
      const before = readFileSync(path);
      store.append([reading(day)]);
      store.checkpoint();
      store.append([reading(day + 100)]);
      store.checkpoint();
      expect(readFileSync(join(`${path}.backups`, names.at(-1)!))).toEqual(before);
    }
    store.close();
    expect(readdirSync(`${path}.backups`).sort()).toEqual(names.slice(-10));
    const backup = await NotebookStore.open(join(`${path}.backups`, names.at(-1)!), testClock());
    expect(backup.entryCount).toBe(4 + 2 * 12);
    expect(verifyChain(backup.entries())).toEqual([]);
    backup.close();
  });

  test('that cannot be made do not keep entries out of the file, but are told', async () => {
    const { path, store } = await newNotebook(1);
    writeFileSync(`${path}.backups`, 'a file in the way');
    const report = store.checkpoint();
    expect(report.wrote).toBe(true);
    expect(report.notes[0]).toMatch(/^The daily backup of lab\.laydown failed/);
    store.close();
  });
});

/** A small disk of its own; only root may mount one. */
function smallDisk(options: string): string | null {
  const folder = temporaryFolder();
  try {
    execFileSync('mount', ['-t', 'tmpfs', '-o', options, 'tmpfs', folder], { stdio: 'ignore' });
  } catch {
    return null;
  }
  onTestFinished(() => {
    execFileSync('umount', ['-l', folder], { stdio: 'ignore' });
  });
  return folder;
}

describe('a full disk', () => {
  test('takes no part of a batch, and goes on when there is room again', async (context) => {
    const folder = smallDisk('size=2m');
    if (!folder) return context.skip('no permission to mount a small disk');
    const path = join(folder, 'lab.laydown');
    const store = await NotebookStore.create(path, testClock());
    store.append(beginning);
    const { draft, content } = attachment('0;1\n'.repeat(400_000));
    const journal = readFileSync(`${path}.journal`);
    expect(() => store.append([reading(1), draft], [content])).toThrow(
      expect.objectContaining({ code: 'disk-full', message: 'Recording in lab.laydown failed: the disk is full. Nothing of it was recorded.' }) as Error,
    );
    expect(readFileSync(`${path}.journal`)).toEqual(journal);
    expect([store.entryCount, store.readOnly, store.attachment(content.sha256)]).toEqual([4, '', undefined]);
    store.append([reading(1)]);
    store.close();
    const again = await NotebookStore.open(path, testClock());
    expect(again.entryCount).toBe(5);
    expect(verifyChain(again.entries())).toEqual([]);
    again.close();
  });

  test('leaves the old file and the journal when a checkpoint does not fit', async (context) => {
    const folder = smallDisk('size=2m');
    if (!folder) return context.skip('no permission to mount a small disk');
    const path = join(folder, 'lab.laydown');
    const store = await NotebookStore.create(path, testClock());
    store.append(beginning);
    const filler = join(folder, 'filler');
    // Room for half of the file that is to be written.
    const { bavail, bsize } = statfsSync(folder);
    writeFileSync(filler, Buffer.alloc(bavail * bsize - statSync(path).size / 2));
    const before = readFileSync(path);
    expect(() => store.checkpoint()).toThrow(expect.objectContaining({ code: 'disk-full', message: expect.stringMatching(/safe in lab\.laydown\.journal/) as string }) as Error);
    expect(readFileSync(path)).toEqual(before);
    rmSync(filler);
    expect(store.checkpoint().wrote).toBe(true);
    store.close();
    const again = await NotebookStore.open(path, testClock());
    expect(again.entryCount).toBe(4);
    again.close();
  });
});

test('a notebook in a folder that cannot be written to is opened for reading, with the reason', async (context) => {
  const { path, store } = await newNotebook(2);
  store.close();
  const disk = smallDisk('size=2m');
  if (disk) {
    copyFileSync(path, join(disk, 'lab.laydown'));
    execFileSync('mount', ['-o', 'remount,ro', disk]);
  } else if (process.getuid?.() === 0) {
    return context.skip('root may write everywhere and cannot mount here');
  }
  const folder = disk ?? join(temporaryFolder(), 'closed');
  if (!disk) {
    mkdirSync(folder);
    copyFileSync(path, join(folder, 'lab.laydown'));
    chmodSync(folder, 0o555);
    onTestFinished(() => chmodSync(folder, 0o755));
  }
  const reader = await NotebookStore.open(join(folder, 'lab.laydown'), testClock());
  expect(reader.readOnly).toMatch(/^lab\.laydown can only be read here: (the disk is read-only|you do not have the permission)\.$/);
  expect(reader.entryCount).toBe(6);
  expect(() => reader.append([reading(3)])).toThrow(expect.objectContaining({ code: 'read-only' }) as Error);
  reader.close();
  expect(readdirSync(folder)).toEqual(['lab.laydown']);
});
