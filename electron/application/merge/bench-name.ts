import path from 'node:path';
import type { NotebookStore } from '../../store/notebook-store.ts';

/** What a bench is called where two come together: the file of its notebook without the ending. */
export function benchName(store: NotebookStore): string {
  return path.basename(store.path).replace(/\.laydown$/i, '').slice(0, 100);
}
