import { spectrumInWords, spectrumOf } from '../../shared-lib/colour/spectrum-text.ts';
import type { CellValue, Field, Method } from '../../shared-lib/method/method.ts';
import type { EntryNames } from '../../shared-lib/notebook/entry-names.ts';
import type { NotebookStore } from '../store/notebook-store.ts';
import type { MethodBook } from './method-book.ts';
import { approvalLineTitle } from './approvals/line-title.ts';
import { FLUID_NAME, INSTRUMENT_NAME } from './queries/equipment.ts';
import { itemName } from './queries/items.ts';
import { withUnit } from './with-unit.ts';

/** Names for the ids in entries, looked up in the notebook; an id that is not there stands for itself. */
export function entryNames(store: NotebookStore, methods: MethodBook): EntryNames {
  const nameIn = (sql: string, id: string) => store.one<{ name: string }>(sql, [id])?.name ?? id;
  const methodOf = (testId: string): Method | undefined => {
    const test = store.one<{ methodId: string; methodVersion: string }>('SELECT methodId, methodVersion FROM test WHERE testId = ?', [testId]);
    return test && methods.findOfTest(test);
  };
  const fieldOf = (testId: string, key: string): Field | undefined => {
    const method = methodOf(testId);
    return [...(method?.readings.fields ?? []), ...(method?.conditions ?? [])].find((field) => field.key === key);
  };
  const value = (testId: string, key: string, cell: CellValue): string => {
    const field = fieldOf(testId, key);
    if (field?.kind === 'choice') return field.choices.find((choice) => choice.value === cell)?.label ?? String(cell);
    if (field?.kind === 'trace') return traceName(store, String(cell));
    if (field?.kind === 'spectrum') return `a spectrum (${spectrumInWords(spectrumOf(String(cell)))})`;
    if (field?.kind === 'item') return itemName(store, field, String(cell)) ?? String(cell);
    if (field?.kind === 'photo') return nameIn('SELECT name FROM attachment JOIN photo USING (sha256) WHERE photoId = ?', String(cell));
    const unit = field?.unitFrom === undefined ? field?.unit : unitChosen(testId, field.unitFrom);
    return withUnit(cell ?? '', unit);
  };
  const unitChosen = (testId: string, key: string): string | undefined => {
    const chosen = store.one<{ value: CellValue }>('SELECT value FROM condition WHERE testId = ? AND key = ?', [testId, key])?.value;
    return chosen == null ? undefined : value(testId, key, chosen);
  };
  return {
    person: (id) => nameIn('SELECT name FROM person WHERE personId = ?', id),
    material: (id) => nameIn('SELECT name FROM material WHERE materialId = ?', id),
    lot: (id) => nameIn("SELECT material.name || ', lot ' || lot.code AS name FROM lot JOIN material USING (materialId) WHERE lotId = ?", id),
    instrument: (id) => `the instrument ${nameIn(`SELECT ${INSTRUMENT_NAME} AS name FROM instrument WHERE instrumentId = ?`, id)}`,
    fluid: (id) => nameIn(`SELECT ${FLUID_NAME} AS name FROM fluid WHERE fluidId = ?`, id),
    sample: (id) => nameIn('SELECT code AS name FROM sample WHERE sampleId = ?', id),
    method: (id) => methods.find(id)?.shortTitle ?? id,
    test: (id) => {
      const code = nameIn('SELECT code AS name FROM sample JOIN test USING (sampleId) WHERE testId = ?', id);
      return `${methodOf(id)?.shortTitle ?? 'a test'} on ${code}`;
    },
    row: (testId, row) => `${methodOf(testId)?.readings.rowName ?? 'row'} ${row.replace(/^r/, '')}`,
    field: (testId, key) => fieldOf(testId, key)?.label ?? key,
    value,
    file: (sha256) => nameIn('SELECT name FROM attachment WHERE sha256 = ?', sha256),
    report: (id) => nameIn('SELECT number AS name FROM report WHERE reportId = ?', id),
    trialSet: (id) => `the trial set “${nameIn('SELECT title AS name FROM trial_set WHERE trialSetId = ?', id)}”`,
    reference: (id) => `the reference colour “${nameIn('SELECT name FROM reference_colour WHERE referenceId = ?', id)}”`,
    plan: (id) => `“${nameIn('SELECT title AS name FROM plan WHERE planId = ?', id)}”`,
    approval: (id) => `the press approval of ${nameIn("SELECT 'job ' || job || CASE product WHEN '' THEN '' ELSE ', ' || product END AS name FROM approval WHERE approvalId = ?", id)}`,
    approvalLine: (id, lineId) => approvalLineTitle(store, methods, id, lineId),
    trial: (id) => `trial ${nameIn('SELECT name FROM trial WHERE trialId = ?', id)}`,
    property: (methodId, key) => `${methods.property(methodId, key)?.title ?? key} by ${methods.find(methodId)?.shortTitle ?? methodId}`,
  };
}

function traceName(store: NotebookStore, traceId: string): string {
  return store.one<{ name: string }>('SELECT name FROM attachment JOIN trace USING (sha256) WHERE traceId = ?', [traceId])?.name ?? traceId;
}
