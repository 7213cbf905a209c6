import type { Entry } from '../../../shared-lib/notebook/entry.ts';
import type { NotebookStore } from '../../store/notebook-store.ts';

/** Why the lot or sample of `entry` was retired before that: an undone return leaves it as it was. Nothing where it never was. */
export function retiredBefore(store: NotebookStore, entry: Entry, of: 'lot' | 'sample'): { before?: string } {
  const id = `$.${of}Id`;
  const last = store.one<{ reason: string }>(
    `SELECT coalesce(body ->> '$.before', body ->> '$.reason') AS reason FROM entry
     WHERE kind = ?1 AND seq < ?2 AND body ->> ?3 = (SELECT body ->> ?3 FROM entry WHERE seq = ?2) ORDER BY seq DESC LIMIT 1`,
    [`${of}.retired`, entry.seq, id],
  );
  return last ? { before: last.reason } : {};
}
