import type { Tables } from '../../../shared-lib/notebook/tables.ts';
import type { NotebookStore } from '../../store/notebook-store.ts';

/** Title and laboratory as given when the notebook was made. */
export function notebookHeading(store: NotebookStore): { title: string; laboratory: string } {
  const row = store.one<Pick<Tables['notebook'], 'title' | 'laboratory'>>('SELECT title, laboratory FROM notebook', []);
  return row ?? { title: '', laboratory: '' };
}
