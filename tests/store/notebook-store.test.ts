import { existsSync, readdirSync, readFileSync, statSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { NotebookFileError } from '../../electron/store/notebook-file-error.ts';
import { NotebookStore } from '../../electron/store/notebook-store.ts';
import { InputError } from '../../shared-lib/calculation/input-error.ts';
import type { DraftEntry } from '../../shared-lib/notebook/entry.ts';
import { FIRST_PREVIOUS, verifyChain } from '../../shared-lib/notebook/hash-chain.ts';
import { oneOfEach, contentSha256, pdfSha256, traceSha256 } from '../unit/notebook/one-of-each.ts';
import { attachment, beginning, reading } from './drafts.ts';
import { newNotebook, temporaryFolder, testClock } from './temporary-notebook.ts';

const meta = { by: 'p1', occurredAt: '2025-05-03T08:00:00.000Z' };

describe('a new notebook', () => {
  test('is an empty record in one file with a lock beside it', async () => {
    const folder = temporaryFolder();
    const store = await NotebookStore.create(join(folder, 'lab.laydown'), testClock());
    expect([store.entryCount, store.chainHash, store.readOnly, store.openingNotes]).toEqual([0, FIRST_PREVIOUS, '', []]);
    expect(readdirSync(folder).sort()).toEqual(['lab.laydown', 'lab.laydown.journal', 'lab.laydown.lock']);
    store.close();
    expect(readdirSync(folder)).toEqual(['lab.laydown']);
  });

  test('is not made where something stands already', async () => {
    const path = join(temporaryFolder(), 'lab.laydown');
    writeFileSync(path, 'mine');
    await expect(NotebookStore.create(path, testClock())).rejects.toMatchObject({ code: 'exists' });
    expect(readFileSync(path, 'utf8')).toBe('mine');
    expect(existsSync(`${path}.lock`)).toBe(false);
  });

  test('is not made in a folder that is not there', async () => {
    const path = join(temporaryFolder(), 'nowhere', 'lab.laydown');
    await expect(NotebookStore.create(path, testClock())).rejects.toMatchObject({ code: 'missing', name: 'NotebookFileError' });
  });
});

describe('entries', () => {
  test('are there again after closing and opening, and the chain holds', async () => {
    const { store, path } = await newNotebook(25);
    const before = [...store.entries()];
    store.close();
    const again = await NotebookStore.open(path, testClock());
    expect([...again.entries()]).toEqual(before);
    expect(again.entryCount).toBe(29);
    expect(again.chainHash).toBe(before.at(-1)!.hash);
    expect(verifyChain(again.entries())).toEqual([]);
    expect([...again.entries(3, 5)].map(({ seq }) => seq)).toEqual([3, 4, 5]);
    again.close();
  });

  test('are read without gaps over more than one page', async () => {
    const { store } = await newNotebook();
    store.append(Array.from({ length: 1200 }, (_, index) => reading(index + 1)));
    expect([...store.entries()].map(({ seq }) => seq)).toEqual(Array.from({ length: 1204 }, (_, index) => index + 1));
    store.close();
  });

  test('of every kind fill the tables, and the tables can be remade from them', async () => {
    const each = await NotebookStore.create(join(temporaryFolder(), 'each.laydown'), testClock());
    const { drafts, contents } = withRealAttachments();
    each.append(drafts, contents);
    const count = (table: string) => each.one<{ n: number }>(`SELECT count(*) AS n FROM ${table}`)!.n;
    for (const table of ['notebook', 'person', 'material', 'lot', 'sample', 'test', 'test_limit', 'bench_row', 'reading', 'trace', 'report', 'report_test']) {
      expect(count(table), table).toBeGreaterThan(0);
    }
    expect(each.one('SELECT value, typed, corrections FROM reading WHERE key = ?', ['tensionMNm'])).toEqual({ value: 36, typed: '36', corrections: 1 });
    expect(each.one('SELECT value FROM reading WHERE key = ?', ['trace'])).toEqual({ value: 'tr1' });
    expect(each.all('SELECT key, value FROM condition ORDER BY key')).toEqual([
      { key: 'humidity', value: 48 },
      { key: 'side', value: null },
      { key: 'temperatureC', value: 23 },
    ]);
    expect(each.one('SELECT lower, upper, rule FROM test_limit JOIN test USING (testId)')).toEqual({ lower: 36, upper: 44, rule: 'simple' });
    expect(each.one('SELECT voided, remark FROM bench_row WHERE "row" = ?', ['r1'])).toEqual({ voided: 0, remark: 'near the edge' });
    expect(each.tableDifferences()).toEqual([]);
    each.rebuild();
    expect(each.tableDifferences()).toEqual([]);
    each.close();
  });

  test('move a test between running, finished and outdated', async () => {
    const { store } = await newNotebook(1);
    const state = () => store.one<{ state: string }>('SELECT state FROM test')!.state;
    const finish: DraftEntry = {
      kind: 'test.finished',
      body: { testId: 't1', calculation: 'c', calculationVersion: '1', results: {}, verdicts: [], remark: '' },
      ...meta,
    };
    expect(state()).toBe('running');
    store.append([{ kind: 'row.voided', body: { testId: 't1', row: 'r1', reason: 'x' }, ...meta }]);
    expect(state()).toBe('running');
    for (const change of [
      reading(2),
      { kind: 'reading.corrected', body: { testId: 't1', row: 'r1', key: 'tensionMNm', before: 38, value: 36, typed: '36', reason: 'misread' }, ...meta },
      { kind: 'row.restored', body: { testId: 't1', row: 'r1', reason: 'x' }, ...meta },
      { kind: 'limits.set', body: { testId: 't1', limits: [], rule: 'simple', reason: '' }, ...meta },
    ] satisfies DraftEntry[]) {
      store.append([finish]);
      expect(state()).toBe('finished');
      store.append([{ kind: 'row.remarked', body: { testId: 't1', row: 'r1', remark: 'y' }, ...meta }]);
      expect(state()).toBe('finished');
      store.append([change]);
      expect(state()).toBe('outdated');
    }
    store.close();
  });

  test('cost the journal the same however large the notebook is', async () => {
    const { store, path } = await newNotebook();
    const cost = () => {
      const before = statSync(`${path}.journal`).size;
      store.append([reading(1)]);
      return statSync(`${path}.journal`).size - before;
    };
    const early = cost();
    store.append(Array.from({ length: 3000 }, (_, index) => reading(index + 2)));
    const fileBefore = statSync(path).mtimeMs;
    const late = cost();
    // seq has three more digits; the id of the test clock too.
    expect(late - early).toBeLessThanOrEqual(8);
    expect(statSync(path).mtimeMs).toBe(fileBefore);
    store.close();
  });
});

describe('what is refused leaves nothing behind', () => {
  const nan = { ...reading(1), body: { ...reading(1).body, value: NaN } } as DraftEntry;
  const missing = { ...reading(1), body: { ...reading(1).body, value: undefined } } as unknown as DraftEntry;
  const further = { ...reading(1), body: { ...reading(1).body, colour: 'red' } } as unknown as DraftEntry;
  const broken = { ...reading(1), body: { ...reading(1).body, typed: 'a\ud800' } } as DraftEntry;
  test.each<[string, DraftEntry, string, RegExp]>([
    ['NaN', nan, 'body.value', /found NaN/],
    ['undefined', missing, 'body.value', /is missing/],
    ['an unknown field', further, 'body', /colour/],
    ['half a character', broken, 'body.typed', /broken character/],
    ['an unknown kind', { ...reading(1), kind: 'reading.removed' } as unknown as DraftEntry, 'kind', /one of/],
    ['nobody', { ...reading(1), by: '' }, 'by', /empty/],
    ['a day that is none', { ...reading(1), occurredAt: 'yesterday' }, 'occurredAt', /./],
    ['a test that is not there', { ...reading(1), body: { ...reading(1).body, testId: 't9' } } as DraftEntry, '', /not in the notebook/],
    ['a sample that is there already', beginning[2]!, '', /already/],
    ['an attachment without content', attachment('lost').draft, '', /not in the notebook/],
  ])('%s', async (_what, draft, field, message) => {
    const { store, path } = await newNotebook(2);
    const bytes = readFileSync(`${path}.journal`);
    const refused = capture(() => store.append([reading(3), draft]));
    expect(refused).toBeInstanceOf(InputError);
    expect((refused as InputError).field).toBe(field);
    expect((refused as InputError).message).toMatch(message);
    expect(store.entryCount).toBe(6);
    expect(store.one('SELECT count(*) AS n FROM reading')).toEqual({ n: 2 });
    expect(readFileSync(`${path}.journal`)).toEqual(bytes);
    store.append([reading(3)]);
    expect(verifyChain(store.entries())).toEqual([]);
    store.close();
  });

  test('an attachment whose content is another one, or that nobody announced', async () => {
    const { store } = await newNotebook();
    const { draft, content } = attachment('force;mm');
    expect(() => store.append([draft], [{ ...content, bytes: new TextEncoder().encode('farce;mm') }])).toThrow(InputError);
    expect(() => store.append([reading(1)], [content])).toThrow(InputError);
    expect(store.one('SELECT count(*) AS n FROM attachment_content')).toEqual({ n: 0 });
    store.close();
  });
});

describe('attachments', () => {
  test('are stored once and come back byte for byte, also through the journal', async () => {
    const { store, path } = await newNotebook();
    const { draft, content } = attachment('displacement;force\n0;0,1\n');
    store.append([draft], [content]);
    store.append([draft], [content]);
    store.append([draft]);
    expect(store.one('SELECT count(*) AS n FROM attachment_content')).toEqual({ n: 1 });
    const reader = await NotebookStore.open(path, testClock());
    expect(reader.attachment(content.sha256)).toEqual(content.bytes);
    expect(reader.attachment('0'.repeat(64))).toBeUndefined();
    reader.close();
    store.close();
  });
});

describe('queries', () => {
  test('cannot change anything', async () => {
    const { store } = await newNotebook(1);
    expect(() => store.all('DELETE FROM reading')).toThrow(/readonly/);
    expect(() => store.all(`INSERT INTO person (personId, name, initials, role, addedSeq) VALUES ('x','x','x','x',1)`)).toThrow(/readonly/);
    expect(store.one('SELECT count(*) AS n FROM reading')).toEqual({ n: 1 });
    store.close();
  });

  test('refuse parameters that SQLite would take for something else', async () => {
    const { store } = await newNotebook();
    for (const value of [NaN, Infinity, undefined, {}]) {
      expect(() => store.all('SELECT ?', [value as never]), String(value)).toThrow(TypeError);
    }
    store.close();
  });

  test('give no row as undefined and leave no statement open', async () => {
    const { store } = await newNotebook(3);
    expect(store.one('SELECT * FROM reading WHERE testId = ?', ['none'])).toBeUndefined();
    store.one('SELECT * FROM reading'); // stepped once of three times
    store.rebuild(); // "database table is locked" if it were still open
    store.close();
  });
});

test('a closed notebook takes no entries', async () => {
  const { store } = await newNotebook();
  store.close();
  expect(() => store.append([reading(1)])).toThrow(NotebookFileError);
});

/** The drafts of every kind with contents that hash to what they name. */
function withRealAttachments() {
  const [content, pdf, trace] = ['{}', '%PDF', 'mm;N\n0;1\n'].map(attachment) as [ReturnType<typeof attachment>, ReturnType<typeof attachment>, ReturnType<typeof attachment>];
  const text = JSON.stringify(oneOfEach.filter(({ kind }) => kind !== 'attachment.added'))
    .replaceAll(contentSha256, content.content.sha256)
    .replaceAll(pdfSha256, pdf.content.sha256)
    .replaceAll(traceSha256, trace.content.sha256);
  const drafts = [content.draft, pdf.draft, trace.draft, ...(JSON.parse(text) as DraftEntry[])];
  return { drafts, contents: [content.content, pdf.content, trace.content] };
}

function capture(work: () => unknown): unknown {
  try {
    return work();
  } catch (error) {
    return error;
  }
}
