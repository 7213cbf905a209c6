import { mkdtempSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { NotebookStore } from '../../electron/store/notebook-store.ts';
import { systemClock } from '../../electron/store/clock.ts';

test('smoke', async () => {
  const path = join(mkdtempSync(join(tmpdir(), 'laydown-')), 'lab.laydown');
  const store = await NotebookStore.create(path, systemClock());
  const at = new Date().toISOString();
  store.append([{ kind: 'notebook.created', body: { title: 'a', laboratory: 'b' }, by: 'p1', occurredAt: at }]);
  store.append([{ kind: 'sample.added', body: { sampleId: 's', code: 'S1', product: '', job: '', roll: '', note: '', lotIds: [] }, by: 'p1', occurredAt: at }]);
  expect(() => store.append([{ kind: 'sample.added', body: { sampleId: 's2', code: 'S1', product: '', job: '', roll: '', note: '', lotIds: ['no'] }, by: 'p1', occurredAt: at }])).toThrow(/not in the notebook/);
  store.checkpoint();
  store.append([{ kind: 'sample.added', body: { sampleId: 's2', code: 'S1', product: '', job: '', roll: '', note: '', lotIds: [] }, by: 'p1', occurredAt: at }]);
  expect(store.tableDifferences()).toEqual([]);
  const second = await NotebookStore.open(path, systemClock());
  expect(second.entryCount).toBe(3);
  console.log(second.readOnly, second.openingNotes);
  store.rebuild();
  store.close();
  second.close();
  const third = await NotebookStore.open(path, systemClock());
  expect(third.entryCount).toBe(3);
  expect(third.readOnly).toBe('');
  third.close();
});
