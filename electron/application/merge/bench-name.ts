import { stem } from '../../store/companion-paths.ts';
import type { NotebookStore } from '../../store/notebook-store.ts';

/** What a bench is called where two come together: the file of its notebook without the ending. */
export function benchName(store: NotebookStore): string {
  return stem(store.path).slice(0, 100);
}
