import { NotebookStore } from '../../electron/store/notebook-store.ts';
import type { DraftEntry, Entry } from '../../shared-lib/notebook/entry.ts';

/** How much a large notebook holds: several years of a busy laboratory. */
export interface NotebookSize {
  samples: number;
  tests: number;
  readings: number;
  traces: number;
}

/** Entries appended at a time. */
const BATCH = 20_000;

/** What is taken over once. */
const KEPT = ['notebook.created', 'person.added', 'material.added', 'lot.added', 'attachment.added'];
/** What speaks of a test and of something else that is not taken over. */
const LEFT_OUT = ['planLine.tested', 'work.witnessed'];

/** Of so many tests one is under way still: a laboratory finishes what it begins. */
const ONE_UNDER_WAY_IN = 500;

interface TestTemplate {
  entries: Entry[];
  readings: number;
  traces: number;
  /** Nothing came after its result. */
  finished: boolean;
}

/**
 * Makes a notebook at `file` out of the work in `demo`: its materials and people, and its tests over and over on new
 * samples, under new ids, until there are as many of everything as asked for.
 */
export async function makeLargeNotebook(file: string, demo: NotebookStore, size: NotebookSize, clock: { now(): Date; ulid(): string }): Promise<NotebookStore> {
  const store = await NotebookStore.create(file, clock);
  const all = [...demo.entries()];
  const attachments = all.flatMap((entry) => (entry.kind === 'attachment.added' ? [{ entry, bytes: demo.attachment(entry.body.sha256)! }] : []));
  store.append(
    all.filter(({ kind }) => KEPT.includes(kind)).map(({ kind, body, by, occurredAt }) => ({ kind, body, by, occurredAt }) as DraftEntry),
    attachments.map(({ entry, bytes }) => ({ sha256: entry.body.sha256, bytes })),
  );

  const samples = all.filter((entry) => entry.kind === 'sample.added');
  const templates = testTemplates(all).sort((a, b) => b.readings - a.readings);
  const withTraces = templates.filter(({ traces, finished }) => traces > 0 && finished);
  const plain = templates.filter(({ traces, readings, finished }) => traces === 0 && readings > 0 && finished);
  const underWay = templates.filter(({ finished }) => !finished);
  const left = { ...size };
  let drafts: DraftEntry[] = [];
  for (let sample = 0; sample < size.samples; sample++) {
    const sampleId = clock.ulid();
    const { body, by, occurredAt } = samples[sample % samples.length]!;
    drafts.push({ kind: 'sample.added', body: { ...body, sampleId, code: `${body.code}-${sample}` }, by, occurredAt });
    for (let tests = Math.ceil(left.tests / (size.samples - sample)); tests > 0; tests--) {
      const template = templateOf(left, { withTraces, plain, underWay });
      drafts.push(...copyOf(template, sampleId, clock.ulid));
      left.tests -= 1;
      left.readings -= template.readings;
      left.traces -= template.traces;
    }
    if (drafts.length >= BATCH || sample === size.samples - 1) {
      store.append(drafts);
      drafts = [];
    }
    if (sample % 1000 === 999) store.checkpoint();
  }
  store.checkpoint();
  return store;
}

function templateOf(left: NotebookSize, { withTraces, plain, underWay }: Record<'withTraces' | 'plain' | 'underWay', TestTemplate[]>): TestTemplate {
  const nth = (templates: TestTemplate[], every: number) => templates[Math.floor(left.tests / every) % templates.length]!;
  if (left.tests % ONE_UNDER_WAY_IN === 1) return nth(underWay, ONE_UNDER_WAY_IN);
  return left.traces > 0 && left.tests % 20 === 0 ? nth(withTraces, 20) : fitting(plain, left);
}

/** The test whose number of readings comes next to what is still to be had of each. */
function fitting(templates: TestTemplate[], left: NotebookSize): TestTemplate {
  const wanted = left.readings / left.tests;
  const above = templates.filter(({ readings }) => readings >= wanted);
  const below = templates.filter(({ readings }) => readings < wanted);
  const from = left.tests % 2 === 0 ? above : below;
  return from.length > 0 ? from[left.tests % from.length]! : templates[left.tests % templates.length]!;
}

function testTemplates(all: Entry[]): TestTemplate[] {
  const byTest = new Map<string, Entry[]>();
  for (const entry of all) {
    if (!('testId' in entry.body) || entry.body.testId === null || LEFT_OUT.includes(entry.kind)) continue;
    const of = byTest.get(entry.body.testId) ?? [];
    of.push(entry);
    byTest.set(entry.body.testId, of);
  }
  return [...byTest.values()].map((entries) => ({
    entries,
    readings: entries.filter(({ kind }) => kind === 'reading.entered' || kind === 'trace.read').length,
    traces: entries.filter(({ kind }) => kind === 'trace.read').length,
    finished: entries.at(-1)!.kind === 'test.finished',
  }));
}

/** The entries of a test under new ids, on another sample. */
function copyOf(template: TestTemplate, sampleId: string, ulid: () => string): DraftEntry[] {
  const testId = ulid();
  return template.entries.map(({ kind, body, by, occurredAt }) => {
    const copy: Record<string, unknown> = { ...body, testId };
    if ('sampleId' in copy) copy.sampleId = sampleId;
    for (const id of ['traceId', 'photoId']) if (id in copy) copy[id] = ulid();
    return { kind, body: copy, by, occurredAt } as DraftEntry;
  });
}
