import type { Tables } from '../../../shared-lib/notebook/tables.ts';
import type { NotebookStore } from '../../store/notebook-store.ts';

export type StoredReport = Tables['report'] & { tests: number };

const REPORTS = `SELECT report.*, (SELECT count(*) FROM report_test WHERE report_test.reportId = report.reportId) AS tests FROM report`;

/** Newest first. */
export function listReports(store: NotebookStore): StoredReport[] {
  return store.all<StoredReport>(`${REPORTS} ORDER BY issuedSeq DESC`, []);
}

export function findReport(store: NotebookStore, reportId: string): StoredReport | undefined {
  return store.one<StoredReport>(`${REPORTS} WHERE reportId = ?`, [reportId]) ?? undefined;
}

/** Numbers begin anew each year: LR-2026-001, LR-2026-002 … */
export function nextReportNumber(store: NotebookStore, year: number): string {
  const prefix = `LR-${year}-`;
  const { issued } = store.one<{ issued: number }>('SELECT count(*) AS issued FROM report WHERE number LIKE ?', [`${prefix}%`])!;
  return `${prefix}${String(issued + 1).padStart(3, '0')}`;
}
