import type { SearchGroup } from '../../../../shared-lib/notebook/search-views.ts';
import type { OpenNotebook } from '../../open-notebook.ts';

/** One kind of thing that a search looks for. `words`: at least one, none with a blank; all of them must be found. */
export interface SearchKind {
  title: string;
  find(notebook: OpenNotebook, words: readonly string[], limit: number): Omit<SearchGroup, 'title'>;
}
