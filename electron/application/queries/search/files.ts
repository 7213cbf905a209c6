import type { AttachedTo } from '../../../../shared-lib/notebook/attachment-entries.ts';
import type { SearchHit } from '../../../../shared-lib/notebook/search-views.ts';
import { rowsKind } from './rows-kind.ts';
import type { SearchKind } from './search-kind.ts';

/** Files by their name and caption; each opens where it belongs. Traces and pictures open with their test. */
const rows = rowsKind(
  'Files',
  'notebook',
  `SELECT attachedTo || ' ' || attachedId || ' ' || sha256 AS key, attachedTo || ' ' || attachedId AS id, name AS title,
     CASE WHEN caption = '' THEN attachedTo ELSE caption END AS detail, name || ' ' || caption AS words, seq AS newest
   FROM attachment_link JOIN attachment USING (sha256)
   UNION ALL SELECT 'test ' || traceId, 'test ' || testId, name, 'trace', name || ' trace', seq FROM trace JOIN attachment USING (sha256)
   UNION ALL SELECT 'test ' || photoId, 'test ' || testId, name, 'measured photograph', name || ' photograph', seq FROM photo JOIN attachment USING (sha256)`,
);

const screens: Record<AttachedTo, SearchHit['screen']> = {
  sample: 'samples',
  lot: 'lot',
  material: 'material',
  test: 'bench-sheet',
  method: 'methods',
  instrument: 'instruments',
  fluid: 'instruments',
};

export const files: SearchKind = {
  title: rows.title,
  find(notebook, words, limit) {
    const found = rows.find(notebook, words, limit);
    return { ...found, hits: found.hits.map((hit) => ({ ...hit, ...placeOf(hit.id) })) };
  },
};

function placeOf(attached: string): Pick<SearchHit, 'screen' | 'id'> {
  const [to, id] = attached.split(' ') as [AttachedTo, string];
  return { screen: screens[to], id: screens[to] === 'instruments' ? '' : id };
}
