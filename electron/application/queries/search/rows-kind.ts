import type { SearchHit } from '../../../../shared-lib/notebook/search-views.ts';
import { likePattern } from '../like-pattern.ts';
import type { SearchKind } from './search-kind.ts';

/** Above this many, nobody needs to know how many more there are. */
export const MOST_COUNTED = 1000;

/**
 * A kind whose things are rows of a table.
 * @param rows SELECT that gives `key`, `id` (to open it by), `title`, `detail`, `words` (all that is looked through) and
 *   `newest` (the order).
 */
export function rowsKind(title: string, screen: SearchHit['screen'], rows: string): SearchKind {
  return {
    title,
    find({ store }, words, limit) {
      const found = `FROM (${rows}) WHERE ${words.map(() => String.raw`words LIKE ? ESCAPE '\'`).join(' AND ')}`;
      const patterns = words.map(likePattern);
      const whole = words.join(' ');
      const hits = store.all<Omit<SearchHit, 'screen'>>(
        `SELECT key, id, title, detail ${found} ORDER BY title = ? COLLATE NOCASE DESC, newest DESC LIMIT ?`,
        [...patterns, whole, limit],
      );
      const total = hits.length < limit ? hits.length : store.one<{ total: number }>(`SELECT count(*) AS total FROM (SELECT 1 ${found} LIMIT ?)`, [...patterns, MOST_COUNTED + 1])!.total;
      return { total: Math.min(total, MOST_COUNTED), many: total > MOST_COUNTED, hits: hits.map((hit) => ({ ...hit, screen })) };
    },
  };
}
