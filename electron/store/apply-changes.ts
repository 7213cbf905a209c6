import { tableKeys, tableNames, type TableChange } from '../../shared-lib/notebook/tables.ts';
import type { Entry } from '../../shared-lib/notebook/entry.ts';
import { saidAgain } from '../../shared-lib/notebook/entry-writes.ts';
import { repeatedWords } from '../../shared-lib/notebook/merge-conflicts.ts';
import { project } from '../../shared-lib/notebook/project.ts';
import type { Database, SqlValue } from './database.ts';
import { withPlacesHere } from './places-here.ts';
import type { RecordLookup } from './record-lookup.ts';

/**
 * Does to the tables what `entry` says; inside a transaction.
 * @param record Holds the entries that a merge names: of two that contradict each other, the one that was taken is said again.
 */
export function applyEntry(database: Database, entry: Entry, record: RecordLookup): void {
  const changes = project(entry.sealedSeq === undefined ? entry : withPlacesHere(entry, record));
  if (entry.kind === 'notebook.merged') changes.unshift(...repeatedWords(entry.body, (id) => record.byId(id)).flatMap(({ word, against }) => saidAgain(word, against)));
  for (const change of changes) {
    if (entry.sealedSeq === undefined) applyChange(database, change);
    // The notebook keeps its own title, and what two benches made under one key is no error.
    else if (change.table !== 'notebook') applyChange(database, change.change === 'insert' ? ({ ...change, change: 'put', add: {} } as TableChange) : change);
  }
}

/** Empties the tables that are made from entries; inside a transaction. */
export function clearTables(database: Database): void {
  for (const table of tableNames.toReversed()) database.run(`DELETE FROM ${table}`);
}

type Columns = Record<string, SqlValue>;

function applyChange(database: Database, change: TableChange): void {
  switch (change.change) {
    case 'insert':
      return insert(database, change.table, { ...change.row } as Columns, '');
    case 'put': {
      const row = { ...change.row } as Columns;
      const keys: readonly string[] = tableKeys[change.table];
      const updates = [
        ...Object.keys(row).filter((column) => !keys.includes(column)).map((column) => `"${column}" = excluded."${column}"`),
        ...Object.keys(change.add).map((column) => `"${column}" = "${column}" + excluded."${column}"`),
      ];
      const conflict = ` ON CONFLICT (${names(keys)}) DO ${updates.length === 0 ? 'NOTHING' : `UPDATE SET ${updates.join(', ')}`}`;
      return insert(database, change.table, { ...row, ...change.add } as Columns, conflict);
    }
    case 'set': {
      const values = change.values as Columns;
      const where = change.where as Columns;
      const assignments = Object.keys(values).map((column) => `"${column}" = ?`).join(', ');
      return database.run(`UPDATE ${change.table} SET ${assignments} WHERE ${matches(where)}`, [
        ...Object.values(values),
        ...Object.values(where),
      ]);
    }
    case 'remove': {
      const where = change.where as Columns;
      return database.run(`DELETE FROM ${change.table} WHERE ${matches(where)}`, Object.values(where));
    }
  }
}

function insert(database: Database, table: string, row: Columns, conflict: string): void {
  const columns = Object.keys(row);
  database.run(`INSERT INTO ${table} (${names(columns)}) VALUES (${columns.map(() => '?').join(', ')})${conflict}`, Object.values(row));
}

function names(columns: readonly string[]): string {
  return columns.map((column) => `"${column}"`).join(', ');
}

function matches(where: Columns): string {
  return Object.keys(where).map((column) => `"${column}" = ?`).join(' AND ');
}
