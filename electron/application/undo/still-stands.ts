import type { Entry } from '../../../shared-lib/notebook/entry.ts';
import { project } from '../../../shared-lib/notebook/project.ts';
import type { TableChange } from '../../../shared-lib/notebook/tables.ts';
import type { SqlValue } from '../../store/database.ts';
import type { NotebookStore } from '../../store/notebook-store.ts';

/** Whether the tables still hold all that `entry` put into them: nobody has said otherwise of the same thing since. */
export function stillStands(store: NotebookStore, entry: Entry): boolean {
  const changes = project(entry).filter(({ table }) => table !== 'entry_about');
  return changes.every((change) => {
    if (change.change === 'set') return rowsWith(store, change.table, { ...change.where, ...change.values }) > 0;
    if (change.change !== 'remove') return rowsWith(store, change.table, change.row) > 0;
    // Rows that are taken away as a group and written anew, such as what a lot was made from.
    return rowsWith(store, change.table, change.where) === changes.filter((other) => other.table === change.table && other.change === 'insert').length;
  });
}

function rowsWith(store: NotebookStore, table: TableChange['table'], columns: object): number {
  const where = Object.keys(columns).map((column) => `"${column}" IS ?`).join(' AND ');
  return store.one<{ rows: number }>(`SELECT count(*) AS rows FROM ${table} WHERE ${where}`, Object.values(columns) as SqlValue[])!.rows;
}
