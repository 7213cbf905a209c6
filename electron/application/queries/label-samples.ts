import { readLabel } from '../../../shared-lib/report/label-sheet.ts';
import type { NotebookStore } from '../../store/notebook-store.ts';

interface Candidate {
  sampleId: string;
  code: string;
  product: string;
  job: string;
  roll: string;
}

/**
 * The samples that a scanned label may be of: those that go by its code, also where a merge marked it since ('S-002 (bench-b)'),
 * and of these the ones that agree with most of the rest that it holds.
 * @param search What was scanned or typed.
 * @returns Their ids, the one whose code is exactly the label's first; `[]` when it is no label, or none goes by its code any more.
 */
export function samplesOfLabel(store: NotebookStore, search: string): string[] {
  const { code, rest } = readLabel(search);
  if (rest.length === 0) return [];
  const candidates = store
    .all<Candidate>("SELECT sampleId, code, product, job, roll FROM sample WHERE code = ?1 COLLATE NOCASE OR substr(code, 1, length(?1) + 2) = (?1 || ' (') COLLATE NOCASE ORDER BY length(code), addedSeq DESC", [code])
    .map((sample) => ({ sample, agrees: agreements(sample, rest) }));
  const most = Math.max(0, ...candidates.map(({ agrees }) => agrees));
  return candidates.filter(({ agrees }) => agrees === most).map(({ sample }) => sample.sampleId);
}

/** Of how many parts of the rest it is said to be. */
function agreements({ product, job, roll }: Candidate, rest: string[]): number {
  const said = [product, `job ${job}`, roll].map((text) => text.replaceAll('|', '/').toLowerCase());
  return rest.filter((part) => said.some((text) => text.includes(part.toLowerCase()))).length;
}
