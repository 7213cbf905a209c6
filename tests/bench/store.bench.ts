import { closeSync, fsyncSync, mkdtempSync, openSync, readFileSync, rmSync, statSync, writeSync } from 'node:fs';
import path from 'node:path';
import { ulid } from 'ulid';
import { companionPaths } from '../../electron/store/companion-paths.ts';
import { NotebookStore } from '../../electron/store/notebook-store.ts';
import type { DraftEntry } from '../../shared-lib/notebook/entry.ts';
import { compare, milliseconds } from './compare.ts';

const FEW = 10;
const MANY = 20_000;
/** On the disk of the project: a folder for temporary files may lie in memory, where nothing is waited for. */
const folder = mkdtempSync(path.join('out', 'bench-store-'));
process.on('exit', () => rmSync(folder, { recursive: true, force: true }));

const clock = { now: () => new Date('2026-03-02T08:00:00.000Z'), ulid: () => ulid() };
const meta = { by: 'p1', occurredAt: '2026-03-02T08:00:00.000Z' };
const beginning: DraftEntry[] = [
  { kind: 'notebook.created', body: { title: 'Bench', laboratory: 'Quillmere Flexibles' }, ...meta },
  { kind: 'person.added', body: { personId: 'p1', name: 'Imke Rasmund', initials: 'IR', role: 'technician' }, ...meta },
  { kind: 'sample.added', body: { sampleId: 's1', code: 'S-001', product: 'ground coffee brick', job: '', roll: '', note: '', lotIds: [] }, ...meta },
];

/** Ids and rows have numbers of one length, so that each entry has as many bytes as the other. */
const testId = (test: number) => `t${1000 + test}`;
const startedTest = (test: number): DraftEntry => ({
  kind: 'test.started',
  body: { testId: testId(test), sampleId: 's1', methodId: 'test-fluids', methodVersion: '1', conditions: {}, limits: [], rule: 'guarded' },
  ...meta,
});
const reading = (test: number, number: number): DraftEntry => ({
  kind: 'reading.entered',
  body: { testId: testId(test), row: `r${1000 + (number % 1000)}`, key: 'wetsMNm', value: 38, typed: '38' },
  ...meta,
});

interface Book {
  store: NotebookStore;
  file: string;
  /** The last test. */
  test: number;
}

/** A notebook of so many entries, up to a hundred readings to a test. */
async function notebook(name: string, entries: number): Promise<Book> {
  const file = path.join(folder, name);
  const store = await NotebookStore.create(file, clock);
  store.append(beginning);
  let test = 0;
  while (store.entryCount < entries) {
    test += 1;
    const readings = Math.min(100, entries - store.entryCount - 1);
    store.append([startedTest(test), ...Array.from({ length: readings }, (_, index) => reading(test, index))]);
  }
  store.checkpoint();
  return { store, file, test };
}

const few = await notebook('few.laydown', FEW);
const many = await notebook('many.laydown', MANY);

let number = 0;
const appendOne = ({ store, test }: Book) => store.append([reading(test, number++)]);
const journalBytes = (book: Book) => () => {
  const journal = companionPaths(book.file).journal;
  const before = statSync(journal).size;
  appendOne(book);
  return statSync(journal).size - before;
};

await compare({
  what: 'an entry recorded and fsynced, the notebook 20 000 entries long',
  peer: 'the same in a notebook of 10 entries',
  target: { atMost: 1.5 },
  unit: 'ms',
  runs: 101,
  ours: milliseconds(() => appendOne(many)),
  theirs: milliseconds(() => appendOne(few)),
});

await compare({
  what: 'bytes that this entry adds to the journal',
  peer: 'the same in a notebook of 10 entries',
  target: { atMost: 1.05 },
  unit: 'bytes',
  ours: journalBytes(many),
  theirs: journalBytes(few),
});

/** The checkpoint alone; there must be something to write. */
function checkpoint(): number {
  appendOne(many);
  return milliseconds(() => many.store.checkpoint())();
}

const plain = path.join(folder, 'plain');
function writePlainly(): number {
  const bytes = readFileSync(many.file);
  return milliseconds(() => {
    const fd = openSync(plain, 'w');
    for (let done = 0; done < bytes.length; ) done += writeSync(fd, bytes, done);
    fsyncSync(fd);
    closeSync(fd);
  })();
}

await compare({
  what: 'a checkpoint of 20 000 entries: export, check, replace',
  peer: 'plain write and fsync of the same bytes',
  target: { atMost: 10 },
  unit: 'ms',
  runs: 15,
  ours: checkpoint,
  theirs: writePlainly,
});

few.store.close();
many.store.close();
