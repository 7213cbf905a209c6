import initSqlJs, { type Database as SqlDatabase, type SqlJsStatic, type Statement } from 'sql.js';

export type SqlValue = number | string | Uint8Array | null;

let loading: Promise<SqlJsStatic> | undefined;

/** Loads SQLite once per process. `sql.js` must stay outside of bundles: it looks for its wasm file beside itself. */
export function loadSqlite(): Promise<SqlJsStatic> {
  return (loading ??= initSqlJs());
}

/**
 * A SQLite database in memory. Outside of `transaction` it is read only. Adds to sql.js what it lacks: parameters are
 * checked (it would store NaN as NULL), statements are kept for the next time and closed at the end, errors are Errors.
 */
export class Database {
  private readonly sql: SqlDatabase;
  private readonly prepared = new Map<string, Statement>();

  /** @param bytes A database file; nothing for an empty database. */
  constructor(
    private readonly sqlite: SqlJsStatic,
    bytes?: Uint8Array,
  ) {
    this.sql = new sqlite.Database(bytes);
    this.script('PRAGMA foreign_keys = ON; PRAGMA query_only = ON');
  }

  /** Every row of a query, by column name. */
  all<Row>(sql: string, params: readonly SqlValue[] = []): Row[] {
    return this.query<Row>(sql, params, Infinity);
  }

  /** The first row of a query. */
  one<Row>(sql: string, params: readonly SqlValue[] = []): Row | undefined {
    return this.query<Row>(sql, params, 1)[0];
  }

  /** Runs one statement that gives no rows. */
  run(sql: string, params: readonly SqlValue[] = []): void {
    checkParams(params);
    this.with(sql, (statement) => statement.run([...params]));
  }

  /** Runs several statements without parameters. */
  script(sql: string): void {
    asError(() => this.sql.exec(sql));
  }

  /** All or nothing: what `work` changed is undone when it throws. */
  transaction<Value>(work: () => Value): Value {
    this.script('PRAGMA query_only = OFF; BEGIN IMMEDIATE');
    try {
      const value = work();
      this.script('COMMIT');
      return value;
    } catch (error) {
      this.rollback();
      throw error;
    } finally {
      this.script('PRAGMA query_only = ON');
    }
  }

  /** The database as the bytes of a file. @throws Error inside a transaction. */
  export(): Uint8Array {
    return asError(() => this.sql.export());
  }

  /** Another database with the same SQLite. */
  another(bytes?: Uint8Array): Database {
    return new Database(this.sqlite, bytes);
  }

  close(): void {
    for (const statement of this.prepared.values()) statement.free();
    this.prepared.clear();
    this.sql.close();
  }

  private query<Row>(sql: string, params: readonly SqlValue[], limit: number): Row[] {
    checkParams(params);
    return this.with(sql, (statement) => {
      statement.bind([...params]);
      const rows: Row[] = [];
      while (rows.length < limit && statement.step()) rows.push(statement.getAsObject() as Row);
      return rows;
    });
  }

  /** Each statement is prepared once, and left as nobody has used it. */
  private with<Value>(sql: string, work: (statement: Statement) => Value): Value {
    return asError(() => {
      let statement = this.prepared.get(sql);
      if (!statement) this.prepared.set(sql, (statement = this.sql.prepare(sql)));
      try {
        return work(statement);
      } finally {
        statement.reset();
      }
    });
  }

  /** SQLite may have rolled back by itself; then there is nothing left to undo. */
  private rollback(): void {
    try {
      this.script('ROLLBACK');
    } catch {
      return;
    }
  }
}

function checkParams(params: readonly SqlValue[]): void {
  params.forEach((value, index) => {
    const usable = typeof value === 'number' ? Number.isFinite(value) : value === null || typeof value === 'string' || value instanceof Uint8Array;
    if (!usable) throw new TypeError(`Parameter ${index + 1} of the query cannot be stored: ${String(value)}.`);
  });
}

/** sql.js throws bare strings in places. */
function asError<Value>(work: () => Value): Value {
  try {
    return work();
  } catch (error) {
    throw error instanceof Error ? error : new Error(String(error));
  }
}
