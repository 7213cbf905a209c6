import type { Tables } from '../../../shared-lib/notebook/tables.ts';
import type { NotebookStore } from '../../store/notebook-store.ts';
import type { StoredTest } from './tests.ts';

/** Names that spectra have in their files, by `ROW-KEY`, of a condition `condition-KEY`; of a cell that was typed over since, none. */
export function spectrumFiles(store: NotebookStore, test: StoredTest): Record<string, string> {
  const cells = new Map(test.rows.map(({ row, cells: ofRow }) => [row, ofRow]));
  return Object.fromEntries(
    store.all<Tables['spectrum_file']>('SELECT * FROM spectrum_file WHERE testId = ?', [test.testId]).flatMap(({ row, key, file, seq }) => {
      const cell = row === '' ? test.conditions[key] : cells.get(row)?.[key];
      return cell?.seq === seq ? [[`${row || 'condition'}-${key}`, (JSON.parse(file) as { name: string }).name]] : [];
    }),
  );
}
