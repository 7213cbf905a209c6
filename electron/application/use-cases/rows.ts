import type { ParsedInput } from '../../../shared-lib/api.ts';
import type { BenchSheetView } from '../../../shared-lib/notebook/views.ts';
import { benchSheet } from '../bench-sheet.ts';
import { loadTest } from '../queries/tests.ts';
import { Refusal } from '../refusal.ts';
import { requireReason } from '../require-reason.ts';
import { requireRow, rowTitle } from '../sheet-rows.ts';
import type { Workplace } from '../workplace.ts';

/** A row that counts no more, with the reason; its readings stay on the sheet and in the report. */
export function voidRow(workplace: Workplace, { testId, row, reason }: ParsedInput<'row.void'>): BenchSheetView {
  const { stored, title } = rowOf(workplace, testId, row);
  if (!stored) throw new Refusal('conflict', `${title} has nothing in it to void.`);
  if (stored.voided) throw new Refusal('conflict', `${title} is voided already (${stored.voided.reason}).`);
  requireReason(reason, 'A voided row counts no more');
  workplace.notebook.append([{ kind: 'row.voided', body: { testId, row, reason: reason.trim() } }]);
  return benchSheet(workplace.notebook, testId);
}

export function restoreRow(workplace: Workplace, { testId, row, reason }: ParsedInput<'row.restore'>): BenchSheetView {
  const { stored, title } = rowOf(workplace, testId, row);
  if (!stored?.voided) throw new Refusal('conflict', `${title} is not voided.`);
  requireReason(reason, 'A restored row counts again');
  workplace.notebook.append([{ kind: 'row.restored', body: { testId, row, reason: reason.trim() } }]);
  return benchSheet(workplace.notebook, testId);
}

export function remarkRow(workplace: Workplace, { testId, row, remark }: ParsedInput<'row.remark'>): BenchSheetView {
  const { stored } = rowOf(workplace, testId, row);
  const said = remark.trim();
  if (said !== (stored?.remark ?? '')) workplace.notebook.append([{ kind: 'row.remarked', body: { testId, row, remark: said } }]);
  return benchSheet(workplace.notebook, testId);
}

function rowOf({ notebook }: Workplace, testId: string, row: string) {
  const test = loadTest(notebook.store, testId);
  const method = notebook.methods.ofTest(test);
  requireRow(method, row);
  return { stored: test.rows.find((candidate) => candidate.row === row), title: rowTitle(method, row) };
}
