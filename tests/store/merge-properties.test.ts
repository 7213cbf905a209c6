import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { NotebookStore } from '../../electron/store/notebook-store.ts';
import type { DraftEntry } from '../../shared-lib/notebook/entry.ts';
import { verifyChain } from '../../shared-lib/notebook/hash-chain.ts';
import '../fast-check-seed.ts';
import { attachment } from './drafts.ts';
import { idsIn, merge, tablesIn, twoBenches } from './two-benches.ts';

const meta = { by: 'p1', occurredAt: '2025-05-03T09:00:00.000Z' };

const sampleFields = { code: '', product: '', job: '', roll: '', note: '', customer: '', acrossMm: null, alongM: null, keptAt: '', retainedUntil: null, lotIds: [] };

/** Bodies with ids of things come out of a bench, so that two benches never make the same thing. */
type Work = (bench: string, number: number) => DraftEntry;

const row = fc.constantFrom('r1', 'r2');
const value = fc.constantFrom(36, 38, 40);
const work: fc.Arbitrary<Work> = fc.oneof(
  fc.tuple(row, value).map(([r, v]) => () => ({ kind: 'reading.entered', body: { testId: 't1', row: r, key: 'tensionMNm', value: v, typed: String(v) }, ...meta }) as DraftEntry),
  fc.tuple(row, value).map(([r, v]) => () => ({ kind: 'reading.corrected', body: { testId: 't1', row: r, key: 'tensionMNm', before: 38, value: v, typed: String(v), reason: 'misread' }, ...meta }) as DraftEntry),
  value.map((v) => () => ({ kind: 'condition.entered', body: { testId: 't1', key: 'humidity', value: v, typed: String(v) }, ...meta }) as DraftEntry),
  row.map((r) => (bench: string) => ({ kind: 'row.voided', body: { testId: 't1', row: r, reason: `touched at ${bench}` }, ...meta }) as DraftEntry),
  row.map((r) => () => ({ kind: 'row.restored', body: { testId: 't1', row: r, reason: 'it was another row' }, ...meta }) as DraftEntry),
  row.map((r) => (bench: string, number: number) => ({ kind: 'row.remarked', body: { testId: 't1', row: r, remark: `${bench} ${number}` }, ...meta }) as DraftEntry),
  fc.subarray(['tension', 'spread'] as const).map((properties) => (_bench: string, number: number) => ({
    kind: 'limits.set',
    body: { testId: 't1', limits: properties.map((property) => ({ property, lower: 30 + (number % 3), upper: null, source: 'customer' })), rule: number % 2 ? 'simple' : 'guarded', reason: 'new specification' },
    ...meta,
  }) as DraftEntry),
  fc.constant((bench: string, number: number) => ({
    kind: 'test.finished',
    body: { testId: 't1', calculation: 'wetting-fluid', calculationVersion: '1', results: {}, verdicts: [], remark: `${bench} ${number}` },
    ...meta,
  }) as DraftEntry),
  fc.constantFrom('S-002', 'S-003').map((code) => (bench: string, number: number) => ({
    kind: 'sample.added',
    body: { sampleId: `s-${bench}-${number}`, code, product: 'dumpling pouch 600 g', job: '', roll: '', note: '', lotIds: [] },
    ...meta,
  }) as DraftEntry),
  // The sample that both have, and one that each bench may have made, under a code that others may have.
  fc.tuple(fc.constantFrom('S-001', 'S-002', 'S-003'), fc.constantFrom('S-002', 'S-003', 'S-004')).map(([from, code]) => () => ({
    kind: 'sample.changed',
    body: { sampleId: 's1', before: { ...sampleFields, code: from }, after: { ...sampleFields, code }, reason: 'misread' },
    ...meta,
  }) as DraftEntry),
  fc.constantFrom('Cast PP', 'Blown PE').map((name) => (bench: string, number: number) => ({ kind: 'material.added', body: { materialId: `m-${bench}-${number}`, kind: 'film', name, supplier: '', description: '' }, ...meta }) as DraftEntry),
  fc.constant((bench: string, number: number) => ({ kind: 'person.added', body: { personId: `p-${bench}-${number}`, name: 'Imke Rasmund', initials: 'IR', role: '' }, ...meta }) as DraftEntry),
  fc.constantFrom('Imke Rasmund', 'Imke Vance').map((name) => () => ({ kind: 'person.changed', body: { personId: 'p1', before: { name: 'Imke Rasmund', role: '' }, name, role: 'technician', reason: 'a new name' }, ...meta }) as DraftEntry),
);

/** Something done at one bench, or one of them takes in the other. */
interface Step {
  at: 'a' | 'b';
  does: Work | 'merge';
}
const step: fc.Arbitrary<Step> = fc.record({ at: fc.constantFrom('a', 'b'), does: fc.oneof({ weight: 6, arbitrary: work }, { weight: 1, arbitrary: fc.constant('merge' as const) }) });

function carryOut(stores: { a: NotebookStore; b: NotebookStore }, steps: Step[]): void {
  for (const [number, { at, does }] of steps.entries()) {
    if (does === 'merge') merge(stores[at], stores[at === 'a' ? 'b' : 'a']);
    else stores[at].append([does(at, number)]);
  }
}

function expectSound(store: NotebookStore): void {
  expect(verifyChain(store.entries())).toEqual([]);
  expect(store.tableDifferences()).toEqual([]);
}

test('whatever two benches do and however often they take each other in, both come to the same entries and tables', async () => {
  await fc.assert(
    fc.asyncProperty(fc.array(step, { maxLength: 24 }), async (steps) => {
      const { a, b } = await twoBenches();
      try {
        carryOut({ a, b }, steps);
        const before = new Set([...idsIn(a), ...idsIn(b)]);
        merge(a, b);
        merge(b, a);
        merge(a, b);
        expect(idsIn(a)).toEqual([...before].sort());
        expect(idsIn(b)).toEqual(idsIn(a));
        expect(tablesIn(b)).toEqual(tablesIn(a));
        for (const store of [a, b]) expectSound(store);
        // Again, and nothing comes of it.
        const counts = [a.entryCount, b.entryCount];
        expect([merge(a, b).brought, merge(b, a).brought]).toEqual([[], []]);
        expect([a.entryCount, b.entryCount]).toEqual(counts);
        const tables = tablesIn(a);
        a.rebuild();
        expect(tablesIn(a)).toEqual(tables);
      } finally {
        a.close();
        b.close();
      }
    }),
    { numRuns: 40 },
  );
}, 300_000);

test('two benches that take each other in without more come to the same tables as well', async () => {
  await fc.assert(
    fc.asyncProperty(fc.array(step.filter(({ does }) => does !== 'merge'), { maxLength: 16 }), async (steps) => {
      const [left, right] = [await twoBenches(), await twoBenches()];
      const stores = [left.a, left.b, right.a, right.b];
      try {
        for (const pair of [left, right]) carryOut(pair, steps);
        merge(left.a, left.b);
        merge(right.b, right.a);
        expect(idsIn(left.a)).toEqual(idsIn(right.b));
        expect(tablesIn(left.a)).toEqual(tablesIn(right.b));
      } finally {
        for (const store of stores) store.close();
      }
    }),
    { numRuns: 25 },
  );
}, 300_000);

test('a file comes along once, and a bench that took in a third one brings its entries too', async () => {
  const { a, b } = await twoBenches();
  const { a: elsewhere } = await twoBenches();
  const { draft, content } = attachment('0;1\n');
  elsewhere.append([draft], [content]);
  b.append([draft], [content]);
  const sample: DraftEntry = { kind: 'sample.added', body: { sampleId: 's9', code: 'S-900', product: '', job: '', roll: '', note: '', lotIds: [] }, ...meta };
  b.append([sample]);
  expect(merge(a, b).files).toEqual([content.sha256]);
  expect(a.attachment(content.sha256)).toEqual(content.bytes);
  expect(a.one('SELECT code FROM sample WHERE sampleId = ?', ['s9'])).toEqual({ code: 'S-900' });
  for (const store of [a, b, elsewhere]) store.close();
});
