import type { Field, Method } from '../../shared-lib/method/method.ts';
import { replicatesText } from '../../shared-lib/plan/line-texts.ts';
import { momentText } from '../../shared-lib/plan/moment-text.ts';
import { formatValue } from '../../shared-lib/quantity/format.ts';
import type { PhotoView } from '../../shared-lib/notebook/attachment-views.ts';
import type { BenchSheetView, CellView } from '../../shared-lib/notebook/views.ts';
import { evaluationOf } from './evaluation-of-test.ts';
import type { OpenNotebook } from './open-notebook.ts';
import { itemName } from './queries/items.ts';
import { lotsOfSample } from './queries/materials.ts';
import { plannedLine, plannedRows } from './queries/plans.ts';
import { findSample } from './queries/samples.ts';
import { spectrumFiles } from './queries/spectrum-files.ts';
import { loadTest, type StoredCell, type StoredPhoto, type StoredTest } from './queries/tests.ts';
import { unusual } from './read-cell.ts';
import { sheetRows } from './sheet-rows.ts';
import { testLineOf } from './test-line.ts';
import { witnessLines } from './witness-lines.ts';

/**
 * Everything the bench sheet shows, with the live result.
 * @throws Refusal when there is no such test, or its method is not known here
 */
export function benchSheet(notebook: OpenNotebook, testId: string): BenchSheetView {
  const test = loadTest(notebook.store, testId);
  const method = notebook.methods.ofTest(test);
  const { live, missing } = evaluationOf(notebook, test, method);
  const items = itemNames(notebook, test, method);
  return {
    test: testLineOf(notebook, test),
    sample: sampleOf(notebook, test.sampleId),
    ...plannedOf(notebook, test, method),
    conditions: cellViews(method.conditions, test.conditions, items, test.startedSeq),
    rows: sheetRows(test, method, plannedRows(notebook.store, testId)).map(({ row, cells, voided, remark }) => ({
      row,
      cells: cellViews(method.readings.fields, cells, items),
      voided,
      remark,
    })),
    limits: test.limits,
    rule: test.rule,
    live,
    missing,
    photos: Object.fromEntries(test.photos.map(({ photoId, ...photo }) => [photoId, photoView(notebook, photo)])),
    traces: Object.fromEntries(test.traces.map(({ traceId, name, points }) => [traceId, { name, points }])),
    items,
    spectrumFiles: spectrumFiles(notebook.store, test),
    remark: test.remark,
    withdrawn: test.withdrawn,
    witnesses: witnessLines(notebook.store, testId),
  };
}

function sampleOf({ store }: OpenNotebook, id: string): BenchSheetView['sample'] {
  const { sampleId, code, product, job, roll } = findSample(store, id)!;
  return { sampleId, code, product, job, roll, lots: lotsOfSample(store, id) };
}

function plannedOf({ store }: OpenNotebook, { testId }: StoredTest, method: Method): Pick<BenchSheetView, 'planned'> {
  const planned = plannedLine(store, testId);
  if (!planned) return {};
  const { planId, plan, line, replicates } = planned;
  return { planned: { planId, plan, momentText: line ? momentText(line.moment) : '', preparation: line?.preparation ?? '', replicatesText: replicatesText({ replicates }, method) } };
}

function photoView(notebook: OpenNotebook, { name, sha256, planeSha256, reading }: Omit<StoredPhoto, 'photoId'>): PhotoView {
  const { area, problem } = notebook.photos.area(planeSha256, reading, name);
  if (!area) return { name, sha256, reading, text: problem, intervalText: '' };
  const { text, intervalText } = formatValue(area.removedPct);
  return { name, sha256, reading, text: `${text} removed`, intervalText };
}

/** Names of what item fields hold, by id; they stand among the conditions alone. */
function itemNames({ store }: OpenNotebook, test: StoredTest, method: Method): Record<string, string> {
  return Object.fromEntries(
    method.conditions.flatMap((field) => {
      const value = test.conditions[field.key]?.value;
      const name = field.kind === 'item' && typeof value === 'string' ? itemName(store, field, value) : undefined;
      return name === undefined ? [] : [[value, name]];
    }),
  );
}

/** @param startedSeq of conditions: the entry that started the test */
function cellViews(fields: Field[], cells: Record<string, StoredCell>, items: Record<string, string>, startedSeq?: number): Record<string, CellView> {
  return Object.fromEntries(
    fields.flatMap((field) => {
      const cell = cells[field.key];
      return cell ? [[field.key, { ...cellView(field, cell, items), ...(cell.seq === startedSeq ? filledInFrom(field) : {}) }]] : [];
    }),
  );
}

function filledInFrom(field: Field): Pick<CellView, 'filledIn'> {
  return field.kind === 'number' && field.daysSince ? { filledIn: 'filled in from lot' } : {};
}

function cellView(field: Field, { value, typed, corrections }: StoredCell, items: Record<string, string>): CellView {
  // What was filled in and not typed is shown as it would be typed.
  const filledIn = value !== null && (typed === '' || typed === value);
  return { value, typed: filledIn ? (items[String(value)] ?? String(value)) : typed, corrections, warning: unusual(field, value) };
}
