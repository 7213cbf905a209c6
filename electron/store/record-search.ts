import type { Entry } from '../../shared-lib/notebook/entry.ts';
import { searchWords } from '../../shared-lib/notebook/project.ts';
import type { SqlValue } from './database.ts';
import type { NotebookStore } from './notebook-store.ts';

/** What to look for; '' leaves a criterion out. */
export interface RecordQuery {
  /** Found in what the entry says, or in the code or product of the sample that it concerns. */
  search: string;
  kind: string;
  by: string;
  testId: string;
  offset: number;
  limit: number;
}

/** An entry with the test and sample that it concerns. */
export interface FoundEntry {
  entry: Entry;
  testId: string | null;
  sampleId: string | null;
}

const source = `
FROM entry
JOIN entry_about ON entry_about.seq = entry.seq
LEFT JOIN test ON test.testId = entry_about.testId
LEFT JOIN sample ON sample.sampleId = coalesce(entry_about.sampleId, test.sampleId)`;

/** The entries that match, newest first, and how many there are in all. */
export function searchRecord(store: NotebookStore, query: RecordQuery): { total: number; found: FoundEntry[] } {
  const conditions: string[] = [];
  const params: SqlValue[] = [];
  const where = (condition: string, ...values: SqlValue[]) => {
    conditions.push(condition);
    params.push(...values);
  };
  for (const word of searchWords(query.search).split(/\s+/).filter(Boolean)) {
    const pattern = `%${word.replace(/[\\%_]/g, '\\$&')}%`;
    where(`(entry_about.words LIKE ? ESCAPE '\\' OR sample.code LIKE ? ESCAPE '\\' OR sample.product LIKE ? ESCAPE '\\')`, pattern, pattern, pattern);
  }
  if (query.kind !== '') where('entry.kind = ?', query.kind);
  if (query.by !== '') where('entry."by" = ?', query.by);
  if (query.testId !== '') where('entry_about.testId = ?', query.testId);
  const filter = conditions.length === 0 ? '' : ` WHERE ${conditions.join(' AND ')}`;
  const total = store.one<{ total: number }>(`SELECT count(*) AS total ${source}${filter}`, params)!.total;
  const rows = store.all<{ seq: number; testId: string | null; sampleId: string | null }>(
    `SELECT entry.seq AS seq, entry_about.testId AS testId, sample.sampleId AS sampleId ${source}${filter} ORDER BY entry.seq DESC LIMIT ? OFFSET ?`,
    [...params, query.limit, query.offset],
  );
  return { total, found: rows.map(({ seq, testId, sampleId }) => ({ entry: [...store.entries(seq, seq)][0]!, testId, sampleId })) };
}
