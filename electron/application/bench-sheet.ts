import type { Field } from '../../shared-lib/method/method.ts';
import type { BenchSheetView, CellView } from '../../shared-lib/notebook/views.ts';
import { evaluationOf } from './evaluation-of-test.ts';
import type { OpenNotebook } from './open-notebook.ts';
import { loadTest, type StoredCell } from './queries/tests.ts';
import { unusual } from './read-cell.ts';
import { sheetRows } from './sheet-rows.ts';
import { testLineOf } from './test-line.ts';
import { sampleView } from './use-cases/samples.ts';

/**
 * Everything the bench sheet shows, with the live result.
 * @throws Refusal when there is no such test, or its method is not known here
 */
export function benchSheet(notebook: OpenNotebook, testId: string): BenchSheetView {
  const test = loadTest(notebook.store, testId);
  const method = notebook.methods.ofTest(test);
  const { live, missing } = evaluationOf(notebook, test, method);
  return {
    test: testLineOf(notebook, test),
    sample: sampleView(notebook, test.sampleId),
    conditions: cellViews(method.conditions, test.conditions),
    rows: sheetRows(test, method).map(({ row, cells, voided, remark }) => ({
      row,
      cells: cellViews(method.readings.fields, cells),
      voided,
      remark,
    })),
    limits: test.limits,
    rule: test.rule,
    live,
    missing,
    traces: Object.fromEntries(test.traces.map(({ traceId, name, points }) => [traceId, { name, points }])),
    remark: test.remark,
  };
}

function cellViews(fields: Field[], cells: Record<string, StoredCell>): Record<string, CellView> {
  return Object.fromEntries(
    fields.flatMap((field) => {
      const cell = cells[field.key];
      return cell ? [[field.key, cellView(field, cell)]] : [];
    }),
  );
}

function cellView(field: Field, { value, typed, corrections }: StoredCell): CellView {
  // What was filled in and not typed is shown as it would be typed.
  return { value, typed: typed === '' && value !== null ? String(value) : typed, corrections, warning: unusual(field, value) };
}
