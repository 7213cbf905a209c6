import type { Tables } from '../../../shared-lib/notebook/tables.ts';
import type { NotebookStore } from '../../store/notebook-store.ts';

/** Title and laboratory as they were said last, and when the notebook was begun. */
export function notebookHeading(store: NotebookStore): Pick<Tables['notebook'], 'title' | 'laboratory' | 'createdAt'> {
  const row = store.one<Pick<Tables['notebook'], 'title' | 'laboratory' | 'createdAt'>>(
    `SELECT createdAt, coalesce(heading.title, notebook.title) AS title, coalesce(heading.laboratory, notebook.laboratory) AS laboratory
     FROM notebook LEFT JOIN notebook_heading AS heading USING (createdAt)`,
  );
  return row ?? { title: '', laboratory: '', createdAt: '' };
}
