import type { SampleDetails } from '../../../shared-lib/notebook/sample-entries.ts';
import { readLabel } from '../../../shared-lib/report/label-sheet.ts';
import type { NotebookStore } from '../../store/notebook-store.ts';
import { SAMPLE_IS_LISTED } from './holds-something.ts';
import { samplesOfLabel } from './label-samples.ts';
import { likePattern } from './like-pattern.ts';

export interface StoredSample extends SampleDetails {
  sampleId: string;
  code: string;
  product: string;
  job: string;
  roll: string;
  note: string;
  /** When it was disposed of, or `null`. */
  retiredAt: string | null;
  retiredReason: string;
  addedAt: string;
}

const COLUMNS = 'SELECT sampleId, code, product, job, roll, note, customer, acrossMm, alongM, keptAt, retainedUntil, retiredAt, retiredReason, addedAt FROM sample';
const MATCHES = String.raw`(code || ' ' || product || ' ' || job || ' ' || roll || ' ' || note || ' ' || customer || ' ' || keptAt) LIKE ? ESCAPE '\'`;

/** Each word of `search` somewhere in the sample; what a label's code holds finds its sample. */
function matching(store: NotebookStore, search: string): { where: string; patterns: string[] } {
  const labelled = samplesOfLabel(store, search);
  if (labelled.length > 0) return { where: `sampleId IN (${labelled.map(() => '?').join(', ')})`, patterns: labelled };
  const words = readLabel(search).code.split(/\s+/).filter(Boolean);
  return { where: words.map(() => MATCHES).join(' AND ') || 'TRUE', patterns: words.map(likePattern) };
}

/** Newest first, without what was undone and holds nothing; `search` is looked for in every field, '' finds all. */
export function listSamples(store: NotebookStore, search: string, limit: number, offset: number): StoredSample[] {
  const { where, patterns } = matching(store, search);
  return store.all<StoredSample>(`${COLUMNS} WHERE (${where}) AND ${SAMPLE_IS_LISTED} ORDER BY addedSeq DESC LIMIT ? OFFSET ?`, [...patterns, limit, offset]);
}

export function countSamples(store: NotebookStore, search: string): number {
  const { where, patterns } = matching(store, search);
  return store.one<{ total: number }>(`SELECT count(*) AS total FROM sample WHERE (${where}) AND ${SAMPLE_IS_LISTED}`, patterns)?.total ?? 0;
}

export function findSample(store: NotebookStore, sampleId: string): StoredSample | undefined {
  return store.one<StoredSample>(`${COLUMNS} WHERE sampleId = ?`, [sampleId]) ?? undefined;
}

export function findSampleByCode(store: NotebookStore, code: string): StoredSample | undefined {
  return store.one<StoredSample>(`${COLUMNS} WHERE code = ?`, [code]) ?? undefined;
}
