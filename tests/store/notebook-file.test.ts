import { chmodSync, mkdirSync, readdirSync, readFileSync, statSync, truncateSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import initSqlJs from 'sql.js';
import { describe, expect, test } from 'vitest';
import { NotebookStore } from '../../electron/store/notebook-store.ts';
import { schemaVersion } from '../../electron/store/schema/migrations.ts';
import { newNotebook, temporaryFolder, testClock } from './temporary-notebook.ts';

/** A closed notebook whose bytes the test spoils. */
async function spoiled(spoil: (bytes: Buffer) => Uint8Array): Promise<string> {
  const { path, store } = await newNotebook(40);
  store.close();
  writeFileSync(path, spoil(readFileSync(path)));
  return path;
}

async function foreignSqlite(): Promise<Uint8Array> {
  const { Database } = await initSqlJs();
  const db = new Database();
  db.exec('CREATE TABLE person (name); INSERT INTO person VALUES (1)');
  const bytes = db.export();
  db.close();
  return bytes;
}

/** https://www.sqlite.org/fileformat.html, section 1.3: user version at 60, pages of the file at 28. */
const withHeader = (offset: number, value: number) => (bytes: Buffer) => {
  bytes.writeUInt32BE(value, offset);
  return bytes;
};

describe('a file that is no sound notebook is refused in one sentence and left alone', () => {
  test.each<[string, () => Promise<string>, string, RegExp]>([
    ['empty', () => spoiled(() => new Uint8Array()), 'not-a-notebook', /0 bytes/],
    ['of one byte', () => spoiled(() => new Uint8Array([83])), 'not-a-notebook', /it is a file of another kind, or its beginning is damaged/],
    ['text', () => spoiled(() => Buffer.from('date;force\n'.repeat(50))), 'not-a-notebook', /it is a file of another kind, or its beginning is damaged/],
    ['of another SQLite program', async () => { const bytes = await foreignSqlite(); return spoiled(() => bytes); }, 'not-a-notebook', /another program/],
    ['of a newer version', () => spoiled(withHeader(60, schemaVersion + 1)), 'newer', /newer version/],
    ['cut in the middle', () => spoiled((bytes) => bytes.subarray(0, bytes.length / 2)), 'damaged', /cut off/],
    ['cut by one byte', () => spoiled((bytes) => bytes.subarray(0, -1)), 'damaged', /cut off/],
    ['cut inside the header', () => spoiled((bytes) => bytes.subarray(0, 60)), 'not-a-notebook', /./],
    ['with something behind it', () => spoiled((bytes) => Buffer.concat([bytes, Buffer.alloc(4096)])), 'damaged', /longer/],
    ['overwritten inside', () => spoiled((bytes) => bytes.fill(0xa5, 4096 * 3, 4096 * 9)), 'damaged', /damaged inside: a part of it cannot be read\. It was left as it is; (open the newest backup from the folder [^/]*\.backups|no backups stand beside it, so open a copy that was kept elsewhere)\.$/],
    ['cut, with a header that says so', () => spoiled((bytes) => withHeader(28, 4)(bytes).subarray(0, 4 * 4096)), 'damaged', /damaged inside/],
    ['a folder', async () => { const path = join(temporaryFolder(), 'x.laydown'); mkdirSync(path); return path; }, 'not-a-notebook', /not a file/],
    ['missing', async () => join(temporaryFolder(), 'x.laydown'), 'missing', /not there/],
  ])('%s', async (_what, make, code, message) => {
    const path = await make();
    const before = statSync(path, { throwIfNoEntry: false })?.isFile() ? readFileSync(path) : null;
    const neighbours = readdirSync(join(path, '..'));
    await expect(NotebookStore.open(path, testClock())).rejects.toMatchObject({ name: 'NotebookFileError', code, message: expect.stringMatching(message) as string });
    if (before) expect(readFileSync(path)).toEqual(before);
    expect(readdirSync(join(path, '..'))).toEqual(neighbours);
  });

  test('a device is not read without end', async () => {
    await expect(NotebookStore.open('/dev/zero', testClock())).rejects.toMatchObject({ code: 'not-a-notebook' });
  });

  test.skipIf(process.getuid?.() === 0)('without permission (skipped for root, whom nothing stops)', async () => {
    const { path, store } = await newNotebook();
    store.close();
    chmodSync(path, 0o000);
    await expect(NotebookStore.open(path, testClock())).rejects.toMatchObject({ code: 'no-permission' });
  });
});

test('every place where a notebook may be cut is noticed', async () => {
  const { path, store } = await newNotebook(5);
  store.close();
  const bytes = readFileSync(path);
  for (let size = bytes.length - 1; size > 0; size -= 997) {
    truncateSync(path, size);
    await expect(NotebookStore.open(path, testClock()), `cut at ${size}`).rejects.toMatchObject({ name: 'NotebookFileError' });
  }
  writeFileSync(path, bytes);
  (await NotebookStore.open(path, testClock())).close();
});

test('an older schema is brought up to date, after a backup', async () => {
  const { Database } = await initSqlJs();
  const db = new Database();
  db.exec(`PRAGMA application_id = ${0x4c59444e}; CREATE TABLE older (a); DROP TABLE older`); // schema 0: nothing yet
  const path = join(temporaryFolder(), 'old.laydown');
  writeFileSync(path, db.export());
  db.close();
  const before = readFileSync(path);
  const store = await NotebookStore.open(path, testClock());
  expect(readFileSync(path)).toEqual(before);
  expect(store.checkpoint().wrote).toBe(true);
  expect(readFileSync(join(`${path}.backups`, 'old-schema-0.laydown'))).toEqual(before);
  expect(readFileSync(path).readUInt32BE(60)).toBe(schemaVersion);
  store.close();
});
