import type { CellValue } from '../../../shared-lib/method/method.ts';
import type { Entry } from '../../../shared-lib/notebook/entry.ts';
import type { NotebookStore } from '../../store/notebook-store.ts';
import type { Draft } from '../open-notebook.ts';
import { loadTest } from '../queries/tests.ts';
import { changedSince, UNDONE } from './undone.ts';

const KINDS = ['reading.entered', 'reading.corrected', 'condition.entered', 'condition.corrected', 'trace.read', 'photo.measured', 'spectrum.read'] as const;

/** An entry that puts a value into a cell of a bench sheet. */
export type CellEntry = Extract<Entry, { kind: (typeof KINDS)[number] }>;

export function isCellEntry(entry: Entry): entry is CellEntry {
  return (KINDS as readonly string[]).includes(entry.kind);
}

/** The correction back to what stood in the cell before. @param entries of the test, in their order @throws Refusal when the cell was changed since */
export function undoCell(store: NotebookStore, entries: Entry[], entry: CellEntry): Draft[] {
  const { testId, key } = entry.body;
  const row = rowOf(entry);
  const [last, earlier] = entries.filter(isCellEntry).filter((other) => other.body.key === key && rowOf(other) === row).toReversed();
  if (last?.seq !== entry.seq) throw changedSince();
  const test = loadTest(store, testId);
  const cell = row === '' ? test.conditions[key] : test.rows.find((stored) => stored.row === row)?.cells[key];
  const { value, typed } = earlier ? contentOf(earlier) : atTheStart(entries, testId, row === '' ? key : null);
  if (!cell || value === cell.value) return [];
  const body = { testId, key, before: cell.value, value, typed, reason: UNDONE };
  return [row === '' ? { kind: 'condition.corrected', body } : { kind: 'reading.corrected', body: { ...body, row } }];
}

/** A condition may have stood there since the test was started; a cell of a row was empty. */
function atTheStart(entries: Entry[], testId: string, condition: string | null): { value: CellValue; typed: string } {
  const started = entries.find((other) => other.kind === 'test.started' && other.body.testId === testId);
  const value = condition !== null && started?.kind === 'test.started' ? (started.body.conditions[condition] ?? null) : null;
  return { value, typed: value === null ? '' : String(value) };
}

function contentOf(entry: CellEntry): { value: CellValue; typed: string } {
  switch (entry.kind) {
    case 'trace.read':
      return { value: entry.body.traceId, typed: '' };
    case 'photo.measured':
      return { value: entry.body.photoId, typed: '' };
    case 'spectrum.read':
      return { value: entry.body.value, typed: '' };
    default:
      return { value: entry.body.value, typed: entry.body.typed };
  }
}

/** '' for a condition. */
function rowOf(entry: CellEntry): string {
  return 'row' in entry.body ? entry.body.row : '';
}
