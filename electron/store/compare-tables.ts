import type { Entry } from '../../shared-lib/notebook/entry.ts';
import { tableKeys, tableNames, type TableName } from '../../shared-lib/notebook/tables.ts';
import { applyEntry } from './apply-changes.ts';
import type { RecordLookup } from './record-lookup.ts';
import type { Database, SqlValue } from './database.ts';
import { migrate } from './schema/migrations.ts';

type Row = Record<string, SqlValue>;

/**
 * Makes the tables from `entries` in a second database and compares.
 * @param record Holds `entries` by id and hash.
 * @returns one sentence for each row that differs, is missing or is too many.
 */
export function tableDifferences(database: Database, entries: Iterable<Entry>, record: RecordLookup): string[] {
  const remade = database.another();
  try {
    migrate(remade);
    remade.script('PRAGMA foreign_keys = OFF'); // the entries themselves are not copied
    const failures: string[] = [];
    remade.transaction(() => {
      for (const entry of entries) failures.push(...applied(remade, entry, record));
    });
    return [...failures, ...tableNames.flatMap((table) => compareTable(table, database, remade))];
  } finally {
    remade.close();
  }
}

/** An entry changed by hand may not do what an entry does; it must not hide what else differs. */
function applied(database: Database, entry: Entry, record: RecordLookup): string[] {
  try {
    applyEntry(database, entry, record);
    return [];
  } catch {
    return [`Entry ${entry.seq} (${entry.kind}) cannot be read any more.`];
  }
}

function compareTable(table: TableName, found: Database, expected: Database): string[] {
  const keys: readonly string[] = tableKeys[table];
  const rowsOf = (database: Database) => new Map(database.all<Row>(`SELECT * FROM ${table}`).map((row) => [keys.map((key) => String(row[key])).join(' '), row]));
  const expectedRows = rowsOf(expected);
  const problems: string[] = [];
  for (const [key, row] of rowsOf(found)) {
    const should = expectedRows.get(key);
    expectedRows.delete(key);
    if (!should) {
      problems.push(`Table ${table}, ${key}: no entry of the record adds it.`);
      continue;
    }
    for (const column of Object.keys(should)) {
      if (row[column] !== should[column]) {
        problems.push(`Table ${table}, ${key}: ${column} is ${shown(row[column])}, but the record says ${shown(should[column])}.`);
      }
    }
  }
  for (const key of expectedRows.keys()) problems.push(`Table ${table}, ${key}: it is missing, but the record adds it.`);
  return problems;
}

function shown(value: SqlValue | undefined): string {
  const text = JSON.stringify(value ?? null);
  return text.length > 80 ? `${text.slice(0, 80)}…` : text;
}
