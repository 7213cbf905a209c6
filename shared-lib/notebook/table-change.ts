import type { ChangeOf, TableName, Tables } from './tables.ts';

/** A new row. */
export function insert<Name extends TableName>(table: Name, row: Tables[Name]): ChangeOf<Name> {
  return { change: 'insert', table, row };
}

/** A new row, or the named columns of the one with that key; columns in `add` are counted up. */
export function put<Name extends TableName>(table: Name, row: Partial<Tables[Name]>, add: Partial<Tables[Name]> = {}): ChangeOf<Name> {
  return { change: 'put', table, row, add };
}

/** The named columns of every row that matches. */
export function set<Name extends TableName>(table: Name, where: Partial<Tables[Name]>, values: Partial<Tables[Name]>): ChangeOf<Name> {
  return { change: 'set', table, where, values };
}

/** Every row that matches goes. */
export function remove<Name extends TableName>(table: Name, where: Partial<Tables[Name]>): ChangeOf<Name> {
  return { change: 'remove', table, where };
}
