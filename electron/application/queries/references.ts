import type { ReferenceColour } from '../../../shared-lib/method/reference-colour.ts';
import type { ToleranceView } from '../../../shared-lib/notebook/colour-views.ts';
import type { Tables } from '../../../shared-lib/notebook/tables.ts';
import { toleranceText } from '../../../shared-lib/notebook/tolerance-text.ts';
import type { NotebookStore } from '../../store/notebook-store.ts';
import { groupBy } from './group-by.ts';

/** A reference colour as it stands in the notebook. */
export interface StoredReference extends ReferenceColour {
  note: string;
  /** Name that its spectrum has in the file it came from, or ''. */
  fileName: string;
  replacedBy: string | null;
  /** `null` while it is in use. */
  retiredAt: string | null;
  retiredReason: string;
  tolerances: ToleranceView[];
  addedAt: string;
}

/** The newest editions, those in use first, by name. */
export function listReferences(store: NotebookStore): StoredReference[] {
  const tolerances = groupBy(store.all<Tables['reference_tolerance']>('SELECT * FROM reference_tolerance ORDER BY customer'), ({ referenceId }) => referenceId);
  return store
    .all<Tables['reference_colour']>('SELECT * FROM reference_colour WHERE replacedBy IS NULL ORDER BY retiredAt IS NOT NULL, name COLLATE NOCASE, addedSeq')
    .map((row) => unpacked(row, tolerances.get(row.referenceId) ?? []));
}

/** `undefined` when there is none of that id; an edition that was replaced is found as well. */
export function findReference(store: NotebookStore, referenceId: string): StoredReference | undefined {
  const row = store.one<Tables['reference_colour']>('SELECT * FROM reference_colour WHERE referenceId = ?', [referenceId]);
  return row && unpacked(row, store.all<Tables['reference_tolerance']>('SELECT * FROM reference_tolerance WHERE referenceId = ? ORDER BY customer', [referenceId]));
}

/** How many editions this one took the place of. */
export function editionsBefore(store: NotebookStore, referenceId: string): number {
  return store.one<{ editions: number }>(
    `WITH RECURSIVE earlier(referenceId) AS (
       SELECT referenceId FROM reference_colour WHERE replacedBy = ?
       UNION SELECT reference_colour.referenceId FROM reference_colour JOIN earlier ON reference_colour.replacedBy = earlier.referenceId)
     SELECT count(*) AS editions FROM earlier`,
    [referenceId],
  )!.editions;
}

function unpacked({ L, a, b, file, addedBy: _by, addedSeq: _seq, ...reference }: Tables['reference_colour'], tolerances: Tables['reference_tolerance'][]): StoredReference {
  return {
    ...reference,
    lab: L === null || a === null || b === null ? null : { L, a, b },
    fileName: file === null ? '' : (JSON.parse(file) as { name: string }).name,
    tolerances: tolerances.map(({ referenceId: _id, seq: _entry, ...tolerance }) => ({ ...tolerance, text: toleranceText(tolerance) })),
  };
}
