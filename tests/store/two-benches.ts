import { copyFileSync } from 'node:fs';
import { join } from 'node:path';
import { NotebookStore } from '../../electron/store/notebook-store.ts';
import { tableKeys, tableNames } from '../../shared-lib/notebook/tables.ts';
import type { DraftEntry } from '../../shared-lib/notebook/entry.ts';
import { beginning } from './drafts.ts';
import { temporaryFolder } from './temporary-notebook.ts';

/** A clock of each bench: every look at it is one second later than the last look at any of them, so that order is plain. */
export function clockOf(bench: string, time: { second: number }) {
  let count = 0;
  return {
    now: () => new Date(Date.UTC(2025, 4, 3, 8) + ++time.second * 1000),
    ulid: () => `${bench}-${String(++count).padStart(6, '0')}`,
  };
}

/** Two copies of one notebook that goes on at both benches. */
export async function twoBenches(drafts: DraftEntry[] = []): Promise<{ a: NotebookStore; b: NotebookStore; folder: string }> {
  const folder = temporaryFolder();
  const time = { second: 0 };
  const first = await NotebookStore.create(join(folder, 'bench-a.laydown'), clockOf('t', time));
  first.append([...beginning, ...drafts]);
  first.close();
  copyFileSync(join(folder, 'bench-a.laydown'), join(folder, 'bench-b.laydown'));
  const a = await NotebookStore.open(join(folder, 'bench-a.laydown'), clockOf('a', time));
  const b = await NotebookStore.open(join(folder, 'bench-b.laydown'), clockOf('b', time));
  return { a, b, folder };
}

/** Ids of all entries, in no order; merges are each notebook's own. */
export function idsIn(store: NotebookStore): string[] {
  return [...store.entries()].filter(({ kind }) => kind !== 'notebook.merged').map(({ id }) => id).sort();
}

/** All tables without the places in the record, which differ from notebook to notebook, and without its merges. */
export function tablesIn(store: NotebookStore): Record<string, unknown[]> {
  return Object.fromEntries(
    tableNames
      .filter((table) => !table.startsWith('merge') && !table.startsWith('entry_'))
      .map((table) => {
        const keys: readonly string[] = tableKeys[table];
        const rows = store.all<Record<string, unknown>>(`SELECT * FROM ${table}`).map((row) => Object.fromEntries(Object.entries(row).filter(([column]) => !/(^s|S)eq$/.test(column))));
        return [table, rows.sort((one, other) => (keyOf(one, keys) < keyOf(other, keys) ? -1 : 1))];
      }),
  );
}

function keyOf(row: Record<string, unknown>, keys: readonly string[]): string {
  return keys.map((key) => String(row[key])).join(' ');
}

export { merge } from './two-benches-merge.ts';
