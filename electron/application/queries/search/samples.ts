import type { SearchHit } from '../../../../shared-lib/notebook/search-views.ts';
import type { NotebookStore } from '../../../store/notebook-store.ts';
import { rowsKind } from './rows-kind.ts';
import type { SearchKind } from './search-kind.ts';

const ROWS = `SELECT sampleId AS key, sampleId AS id, code AS title,
     trim(product || CASE WHEN job = '' THEN '' ELSE ' · ' || job END || CASE WHEN roll = '' THEN '' ELSE ' · ' || roll END, ' ·') AS detail,
     code || ' ' || product || ' ' || job || ' ' || roll || ' ' || customer || ' ' || keptAt || ' ' || note AS words, addedSeq AS newest FROM sample`;

export const samples = rowsKind('Samples', 'samples', ROWS);

/** The samples of those ids, in that order, as `samples` finds them. */
export function samplesById(store: NotebookStore, sampleIds: readonly string[]): ReturnType<SearchKind['find']> {
  const hits = sampleIds.flatMap((id): SearchHit[] => {
    const hit = store.one<Omit<SearchHit, 'screen'>>(`SELECT key, id, title, detail FROM (${ROWS}) WHERE key = ?`, [id]);
    return hit ? [{ ...hit, screen: 'samples' }] : [];
  });
  return { total: hits.length, many: false, hits };
}
