import type { CellValue } from '../method/method.ts';
import type { Entry } from './entry.ts';
import { project } from './project.ts';
import { tableKeys, type TableChange, type TableName } from './tables.ts';

type Value = CellValue | undefined;
type Columns = Record<string, Value>;

/** What an entry says about one thing, by column, and the changes that say it. */
export interface Write {
  says: Columns;
  changes: TableChange[];
}

/** Whether the readings of a row count: one bench voided it, the other wrote in it. It has no column of its own. */
const ROW_COUNTS = 'row counts';

/** Tables that hold no statement of a person that another could contradict. */
const QUIET: ReadonlySet<TableName> = new Set(['notebook', 'entry_about', 'entry_mention', 'signing_refused', 'merge', 'merge_run', 'merge_conflict']);

/**
 * What an entry says, by thing (a row of a table). Left out: its place in the record, counts, and what it does only to
 * rows in a certain state.
 */
export function writesOf(entry: Entry): Map<string, Write> {
  const changes = project(entry).filter(({ table }) => !QUIET.has(table));
  // Rows that are taken away as a group and written anew, such as limits, are one statement.
  const groups = new Map(changes.filter(removesGroup).map((change) => [change.table, thing(change.table, rowOf(change))]));
  const writes = new Map<string, Write>();
  const add = (about: string, says: Columns, change?: TableChange) => {
    const write = writes.get(about) ?? { says: {}, changes: [] };
    Object.assign(write.says, says);
    if (change) write.changes.push(change);
    writes.set(about, write);
  };
  for (const change of changes) {
    const row = rowOf(change);
    const group = groups.get(change.table);
    if (group !== undefined) {
      const before = writes.get(group)?.says.all ?? '';
      add(group, { all: `${String(before)}${change.change} ${JSON.stringify(valuesOf(change))};` }, change);
      continue;
    }
    if (change.change === 'set' && isConditional(change)) continue;
    const says = saysOf(change);
    add(thing(change.table, row), says, change);
    if (change.table === 'reading') add(`${ROW_COUNTS} ${String(row.testId)} ${String(row.row)}`, { state: 'read' });
    if (change.table === 'bench_row' && says.voided === 1) add(`${ROW_COUNTS} ${String(row.testId)} ${String(row.row)}`, { state: 'voided' });
  }
  return writes;
}

/** The test whose finished result does not stand on this entry. */
export function outdates(entry: Entry): string | null {
  const found = project(entry).find((change) => change.table === 'test' && change.change === 'set' && change.where.state === 'finished');
  return found?.change === 'set' && found.table === 'test' ? (found.where.testId ?? null) : null;
}

/**
 * What `entry` says about the same columns of the same things as `other`, as changes that hold whatever stands there:
 * counts are left alone.
 */
export function saidAgain(entry: Entry, other: Entry): TableChange[] {
  const others = writesOf(other);
  return [...writesOf(entry)].flatMap(([about, { says, changes }]) => {
    const against = others.get(about)?.says;
    if (!against || Object.keys(says).every((column) => !(column in against))) return [];
    return changes.map((change) => again(change, says, against)).filter((change) => change.change !== 'set' || Object.keys(change.values).length > 0);
  });
}

function again(change: TableChange, says: Columns, against: Columns): TableChange {
  if (change.change === 'remove') return change;
  const isThere = 'all' in says ? false : against.present !== 0;
  const values = valuesOf(change);
  if (change.change === 'set') return { ...change, values: pick(values, (column) => column in against || 'all' in against) } as TableChange;
  const counted = change.change === 'put' ? Object.keys(change.add) : [];
  if (!isThere) return { change: 'put', table: change.table, row: change.row, add: Object.fromEntries(counted.map((column) => [column, 0])) } as TableChange;
  const keys: readonly string[] = tableKeys[change.table];
  return {
    change: 'set',
    table: change.table,
    where: pick(change.row, (column) => keys.includes(column)),
    values: pick(change.row, (column) => column in against || isPlace(column)),
  } as TableChange;
}

function pick(row: Columns, wanted: (column: string) => boolean): Columns {
  return Object.fromEntries(Object.entries(row).filter(([column]) => wanted(column)));
}

/** `present`: whether the row is there at all. */
function saysOf(change: TableChange): Columns {
  if (change.change === 'remove') return { present: 0 };
  return change.change === 'set' ? valuesOf(change) : { ...valuesOf(change), present: 1 };
}

function rowOf(change: TableChange): Columns {
  return ('where' in change ? change.where : change.row);
}

function valuesOf(change: TableChange): Columns {
  const keys: readonly string[] = tableKeys[change.table];
  const row: Columns = change.change === 'set' ? change.values : rowOf(change);
  return Object.fromEntries(Object.entries(row).filter(([column]) => !keys.includes(column) && !isPlace(column) && column !== 'corrections'));
}

/** A place in the record. */
function isPlace(column: string): boolean {
  return /(^s|S)eq$/.test(column);
}

function thing(table: TableName, row: Columns): string {
  return [table, ...tableKeys[table].flatMap((key: string) => (key in row ? [String(row[key])] : []))].join(' ');
}

function removesGroup(change: TableChange): boolean {
  return change.change === 'remove' && tableKeys[change.table].some((key: string) => !(key in change.where));
}

function isConditional(change: Extract<TableChange, { change: 'set' }>): boolean {
  const keys: readonly string[] = tableKeys[change.table];
  return Object.keys(change.where).some((column) => !keys.includes(column));
}
