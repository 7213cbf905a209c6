import initSqlJs from 'sql.js';
import { expect, test } from 'vitest';
import { Database, loadSqlite } from '../../electron/store/database.ts';

/** What the store relies on in sql.js 1.16; before that, export() closed statements, dropped pragmas and lost transactions. */
test('export keeps foreign keys on, statements alive and functions defined', async () => {
  const { Database: Sql } = await initSqlJs();
  const db = new Sql();
  db.exec('PRAGMA foreign_keys = ON; PRAGMA query_only = ON; PRAGMA query_only = OFF; CREATE TABLE t (a)');
  db.create_function('twice', (value: number) => 2 * value);
  const statement = db.prepare('INSERT INTO t VALUES (?)');
  statement.run([1]);
  db.export();
  statement.run([2]);
  expect(db.exec('PRAGMA foreign_keys')[0]!.values).toEqual([[1]]);
  expect(db.exec('SELECT sum(twice(a)) FROM t')[0]!.values).toEqual([[6]]);
  statement.free();
  db.close();
});

test('export inside a transaction throws instead of losing it', async () => {
  const { Database: Sql } = await initSqlJs();
  const db = new Sql();
  db.exec('CREATE TABLE t (a); BEGIN; INSERT INTO t VALUES (1)');
  expect(() => db.export()).toThrow();
  db.exec('COMMIT');
  expect(db.exec('SELECT a FROM t')[0]!.values).toEqual([[1]]);
  db.close();
});

test('what is exported is what is read back, application id included', async () => {
  const sqlite = await loadSqlite();
  const database = new Database(sqlite);
  database.transaction(() => {
    database.script('CREATE TABLE t (a, b); PRAGMA application_id = 77');
    database.run('INSERT INTO t VALUES (?, ?)', [0.1, new Uint8Array([0, 255])]);
    database.run('INSERT INTO t VALUES (?, ?)', ['µ ₂ ≤ 😀', null]);
  });
  const copy = new Database(sqlite, database.export());
  expect(copy.all('SELECT * FROM t')).toEqual([
    { a: 0.1, b: new Uint8Array([0, 255]) },
    { a: 'µ ₂ ≤ 😀', b: null },
  ]);
  expect(copy.one('PRAGMA application_id')).toEqual({ application_id: 77 });
  copy.close();
  database.close();
});

test('without our check NaN would be stored as nothing, and a second statement skipped', async () => {
  const { Database: Sql } = await initSqlJs();
  const db = new Sql();
  db.exec('CREATE TABLE t (a)');
  db.run('INSERT INTO t VALUES (?); INSERT INTO t VALUES (9)', [NaN]);
  expect(db.exec('SELECT a FROM t')[0]!.values).toEqual([[null]]);
  db.close();
});

test('a transaction that throws is undone, and the database is read only outside of one', async () => {
  const database = new Database(await loadSqlite());
  database.transaction(() => database.script('CREATE TABLE t (a)'));
  expect(() =>
    database.transaction(() => {
      database.run('INSERT INTO t VALUES (1)');
      throw new Error('no');
    }),
  ).toThrow('no');
  expect(() => database.run('INSERT INTO t VALUES (2)')).toThrow(/readonly/);
  expect(database.all('SELECT * FROM t')).toEqual([]);
  database.close();
});
