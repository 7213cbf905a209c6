import type { NotebookStore } from '../../store/notebook-store.ts';
import { likePattern } from './like-pattern.ts';

export interface StoredSample {
  sampleId: string;
  code: string;
  product: string;
  job: string;
  roll: string;
  note: string;
  addedAt: string;
}

const COLUMNS = 'SELECT sampleId, code, product, job, roll, note, addedAt FROM sample';
const MATCHES = String.raw`(code || ' ' || product || ' ' || job || ' ' || roll || ' ' || note) LIKE ? ESCAPE '\'`;

/** Newest first; `search` is looked for in every field, '' finds all. */
export function listSamples(store: NotebookStore, search: string, limit: number, offset: number): StoredSample[] {
  return store.all<StoredSample>(`${COLUMNS} WHERE ${MATCHES} ORDER BY addedSeq DESC LIMIT ? OFFSET ?`, [likePattern(search), limit, offset]);
}

export function countSamples(store: NotebookStore, search: string): number {
  return store.one<{ total: number }>(`SELECT count(*) AS total FROM sample WHERE ${MATCHES}`, [likePattern(search)])?.total ?? 0;
}

export function findSample(store: NotebookStore, sampleId: string): StoredSample | undefined {
  return store.one<StoredSample>(`${COLUMNS} WHERE sampleId = ?`, [sampleId]) ?? undefined;
}

export function findSampleByCode(store: NotebookStore, code: string): StoredSample | undefined {
  return store.one<StoredSample>(`${COLUMNS} WHERE code = ?`, [code]) ?? undefined;
}
