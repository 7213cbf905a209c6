import type { ResultValue } from '../../../shared-lib/calculation/result.ts';
import type { MethodStudy } from '../../../shared-lib/method/method-study.ts';
import type { Tables } from '../../../shared-lib/notebook/tables.ts';
import type { StudyReading } from '../../../shared-lib/notebook/trial-entries.ts';
import { studyText } from '../../../shared-lib/notebook/study-text.ts';
import type { NotebookStore } from '../../store/notebook-store.ts';
import type { MethodBook } from '../method-book.ts';
import { Refusal } from '../refusal.ts';
import { knownTo } from './merges.ts';

export type StoredStudy = Omit<Tables['study'], 'readings' | 'results'> & { readings: StudyReading[]; results: Record<string, ResultValue> };

/** Newest first; `''` for those of every method. */
export function listStudies(store: NotebookStore, methodId: string): StoredStudy[] {
  return store.all<Tables['study']>(`SELECT * FROM study WHERE ?1 = '' OR methodId = ?1 ORDER BY seq DESC`, [methodId]).map(unpacked);
}

/** @throws Refusal when there is no such study */
export function loadStudy(store: NotebookStore, studyId: string): StoredStudy {
  const study = store.one<Tables['study']>('SELECT * FROM study WHERE studyId = ?', [studyId]);
  if (!study) throw new Refusal('not-found', 'This measurement study is not in the notebook.');
  return unpacked(study);
}

/**
 * The last study of each property of a method, of those recorded before entry `before` where that is given. A study by
 * another version of an in-house method holds while that version reads in the same way.
 */
export function studiesInUse(store: NotebookStore, methods: MethodBook, { methodId, methodVersion }: { methodId: string; methodVersion: string }, before: number | null): MethodStudy[] {
  const found = new Map<string, MethodStudy>();
  const known = before === null ? () => true : knownTo(store, before);
  const rows = store.all<Pick<Tables['study'], 'property' | 'kind' | 'results' | 'recordedAt' | 'methodVersion' | 'seq'>>(
    'SELECT property, kind, results, recordedAt, methodVersion, seq FROM study WHERE methodId = ?1 AND (?2 IS NULL OR seq < ?2) ORDER BY seq',
    [methodId, before],
  );
  for (const { property, kind, results, recordedAt, methodVersion: studied, seq } of rows) {
    if (!known(seq)) continue;
    if (!methods.measuresAlike(methodId, property, studied, methodVersion)) continue;
    const values = JSON.parse(results) as Record<string, ResultValue>;
    const numberOf = (name: string) => (kind === 'number' ? (values[name]?.value ?? null) : null);
    found.set(property, {
      property,
      repeatability: numberOf('repeatability'),
      reproducibility: numberOf('reproducibility'),
      text: studyText(values, recordedAt),
    });
  }
  return [...found.values()];
}

function unpacked({ readings, results, ...study }: Tables['study']): StoredStudy {
  return { ...study, readings: JSON.parse(readings) as StudyReading[], results: JSON.parse(results) as Record<string, ResultValue> };
}
