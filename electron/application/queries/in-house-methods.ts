import type { Habit } from '../../../shared-lib/method/in-house/habit.ts';
import type { MethodOrigin, WrittenMethod } from '../../../shared-lib/method/in-house/written-method.ts';
import type { Tables } from '../../../shared-lib/notebook/tables.ts';
import type { NotebookStore } from '../../store/notebook-store.ts';

export interface StoredMethod {
  methodId: string;
  /** That new tests take. */
  version: string;
  title: string;
  retired: boolean;
  retiredReason: string;
}

export interface StoredVersion {
  methodId: string;
  version: string;
  written: WrittenMethod;
  origin: MethodOrigin | null;
  changes: string[];
  reason: string;
  writtenAt: string;
  writtenBy: string;
}

/** In the order of their titles. */
export function listInHouseMethods(store: NotebookStore): StoredMethod[] {
  return store.all<Tables['in_house_method']>('SELECT * FROM in_house_method ORDER BY title, addedSeq').map(methodOf);
}

export function findInHouseMethod(store: NotebookStore, methodId: string): StoredMethod | undefined {
  const row = store.one<Tables['in_house_method']>('SELECT * FROM in_house_method WHERE methodId = ?', [methodId]);
  return row && methodOf(row);
}

export function findVersion(store: NotebookStore, methodId: string, version: string): StoredVersion | undefined {
  const row = store.one<Tables['in_house_version']>('SELECT * FROM in_house_version WHERE methodId = ? AND version = ?', [methodId, version]);
  return row && versionOf(row);
}

/** Newest first. */
export function versionsOf(store: NotebookStore, methodId: string): StoredVersion[] {
  return store.all<Tables['in_house_version']>('SELECT * FROM in_house_version WHERE methodId = ? ORDER BY seq DESC', [methodId]).map(versionOf);
}

/** Every version in the notebook that was taken in from a file, newest first. */
export function versionsTakenIn(store: NotebookStore): StoredVersion[] {
  return store.all<Tables['in_house_version']>('SELECT * FROM in_house_version WHERE origin IS NOT NULL ORDER BY seq DESC').map(versionOf);
}

/** In the order of their titles. */
export function listHabits(store: NotebookStore): { methodId: string; title: string }[] {
  return store.all('SELECT methodId, title FROM habit ORDER BY title, seq');
}

export function findHabit(store: NotebookStore, methodId: string): Habit | null {
  const row = store.one<{ habit: string }>('SELECT habit FROM habit WHERE methodId = ?', [methodId]);
  return row ? (JSON.parse(row.habit) as Habit) : null;
}

/** How many tests were made by each version of a method, and how many of them run. */
export function testsByVersion(store: NotebookStore, methodId: string): Map<string, { tests: number; running: number }> {
  const rows = store.all<{ methodVersion: string; tests: number; running: number }>(
    `SELECT methodVersion, count(*) AS tests, sum(state = 'running') AS running FROM test WHERE methodId = ? GROUP BY methodVersion`,
    [methodId],
  );
  return new Map(rows.map(({ methodVersion, tests, running }) => [methodVersion, { tests, running }]));
}

function methodOf({ methodId, version, title, retired, retiredReason }: Tables['in_house_method']): StoredMethod {
  return { methodId, version, title, retired: retired === 1, retiredReason };
}

function versionOf({ written, origin, changes, seq: _order, ...version }: Tables['in_house_version']): StoredVersion {
  return {
    ...version,
    written: JSON.parse(written) as WrittenMethod,
    origin: origin === null ? null : (JSON.parse(origin) as MethodOrigin),
    changes: JSON.parse(changes) as string[],
  };
}
