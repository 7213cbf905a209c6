import type { SampleDetails } from '../../../shared-lib/notebook/sample-entries.ts';
import { scannedCode } from '../../../shared-lib/report/label-sheet.ts';
import type { NotebookStore } from '../../store/notebook-store.ts';
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

/** Newest first; `search` is looked for in every field, '' finds all; what a label's code holds finds its sample. */
export function listSamples(store: NotebookStore, search: string, limit: number, offset: number): StoredSample[] {
  return store.all<StoredSample>(`${COLUMNS} WHERE ${MATCHES} ORDER BY addedSeq DESC LIMIT ? OFFSET ?`, [likePattern(scannedCode(search)), limit, offset]);
}

export function countSamples(store: NotebookStore, search: string): number {
  return store.one<{ total: number }>(`SELECT count(*) AS total FROM sample WHERE ${MATCHES}`, [likePattern(scannedCode(search))])?.total ?? 0;
}

export function findSample(store: NotebookStore, sampleId: string): StoredSample | undefined {
  return store.one<StoredSample>(`${COLUMNS} WHERE sampleId = ?`, [sampleId]) ?? undefined;
}

export function findSampleByCode(store: NotebookStore, code: string): StoredSample | undefined {
  return store.one<StoredSample>(`${COLUMNS} WHERE code = ?`, [code]) ?? undefined;
}
