import { copyFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { NotebookStore } from '../../electron/store/notebook-store.ts';
import { thumbTwistRub } from '../unit/method/in-house/written-methods.ts';
import { oneOfEach } from '../unit/notebook/one-of-each.ts';
import { temporaryFolder, testClock } from './temporary-notebook.ts';

test('a notebook from before keeps its studies and takes in-house methods with all their versions', async () => {
  const path = join(temporaryFolder(), 'old.laydown');
  copyFileSync(join(import.meta.dirname, 'earlier-notebooks', 'schema-2.sqlite'), path);
  const store = await NotebookStore.open(path, testClock());
  const studies = store.all<{ methodVersion: string }>('SELECT methodVersion FROM study');
  expect(studies.length).toBeGreaterThan(0);
  expect(studies.every(({ methodVersion }) => methodVersion === '')).toBe(true);

  store.append(oneOfEach.filter(({ kind }) => kind === 'habit.described' || kind.startsWith('inHouseMethod.')));
  expect(store.tableDifferences()).toEqual([]);
  store.close();

  const again = await NotebookStore.open(path, testClock());
  expect(again.one('SELECT version, title, retired FROM in_house_method')).toEqual({ version: '2', title: 'Thumb-twist rub', retired: 1 });
  const versions = again.all<{ version: string; written: string; origin: string | null }>('SELECT version, written, origin FROM in_house_version ORDER BY version');
  expect(versions.map(({ version, origin }) => [version, origin !== null])).toEqual([
    ['1', false],
    ['2', true],
  ]);
  // What was written first is still there, word for word.
  expect(JSON.parse(versions[0]!.written)).toEqual(thumbTwistRub);
  expect(again.one('SELECT title FROM habit')).toEqual({ title: 'Thumb-twist rub' });
  again.close();
});
