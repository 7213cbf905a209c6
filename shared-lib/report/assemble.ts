import type { Calculation } from '../calculation/calculation.ts';
import { spectrumInWords, spectrumOf } from '../colour/spectrum-text.ts';
import type { CellValue, Field, Method } from '../method/method.ts';
import { isAsked } from '../method/sheet.ts';
import type { BenchSheetView, CellView, PropertyLine, RowView } from '../notebook/views.ts';
import type { LotView } from '../notebook/lot-view.ts';
import type { ReadingsTable, ReportContent, ReportPicture, ReportSection } from './content.ts';
import { flagInWords } from './flag-place.ts';
import { isTelling } from './property-line.ts';
import { onCommonScales, summaryLines } from './summary-lines.ts';
import { worstVerdict } from './worst-verdict.ts';

/** One finished test as the report needs it. */
export interface ReportTest {
  method: Method;
  calculation: Calculation;
  /** With its live result, which must be the one that was stored when the test was finished. */
  sheet: BenchSheetView;
  testedBy: string;
  /** ISO 8601, UTC. */
  testedAt: string;
  corrections: ReadingsTable['corrections'];
  /** Chosen to be printed; absent: none. */
  pictures?: ReportPicture[];
}

/** What the report is about, apart from its tests. */
export type ReportHead = Pick<
  ReportContent,
  'number' | 'title' | 'laboratory' | 'recipient' | 'remark' | 'preparedBy' | 'preparedAt' | 'replaces' | 'genealogy' | 'record' | 'signatures'
>;

/** The content of a report from its tests, in the order given. */
export function assembleReport(head: ReportHead, tests: ReportTest[]): ReportContent {
  return {
    ...head,
    summary: onCommonScales(
      tests.flatMap(({ method, sheet }) =>
        summaryLines(method, sheet.live?.lines ?? []).map((line) => ({
          sample: sheet.sample.code,
          product: sheet.sample.product,
          method: method.shortTitle,
          line,
        })),
      ),
    ),
    overall: worstVerdict(tests.flatMap(({ sheet }) => (sheet.live?.lines ?? []).map((line) => line.verdict.verdict))),
    sections: tests.map(section),
    appendix: tests.map(readingsTable),
  };
}

function section(test: ReportTest): ReportSection {
  const { method, calculation, sheet } = test;
  const result = sheet.live?.result;
  const lines = (sheet.live?.lines ?? []).filter(isTelling);
  const { code, product, job, roll, lots } = sheet.sample;
  return {
    heading: headingOf(test),
    sample: { code, product, job, roll, materials: lots.map(lotText) },
    method: {
      title: method.title,
      standards: method.standards,
      version: method.version,
      calculation: result?.calculation ?? calculation.id,
      calculationVersion: result?.version ?? calculation.version,
      shows: method.help.shows,
    },
    testedBy: test.testedBy,
    testedAt: test.testedAt,
    conditions: method.conditions.flatMap((field) => {
      const cell = sheet.conditions[field.key];
      const asked = isAsked(field, valuesOf(sheet.conditions), (value) => value in (sheet.items ?? {}));
      return asked && cell && cell.value !== null ? [{ label: field.label, value: withUnit(cellText(field, cell, sheet), field.unit) }] : [];
    }),
    lines,
    columns: calculation.columns,
    table: result?.table ?? [],
    figures: result?.figures ?? [],
    pictures: test.pictures ?? [],
    tables: result?.tables ?? [],
    swatches: result?.swatches ?? [],
    flags: (result?.flags ?? []).map((flag) => flagInWords(method, flag)),
    notes: [...(result?.notes ?? []), ...lines.flatMap(studyNote), ...(sheet.witnesses ?? []).map(({ text }) => text)],
    cautions: method.cautions,
    sources: result?.sources ?? [],
    remark: sheet.remark,
  };
}

/** How well the method measures stands wherever one of its numbers is held against a limit. */
function studyNote(line: PropertyLine): string[] {
  return line.limitText && line.studyText ? [`${line.title}: measurement study of the method, ${line.studyText}.`] : [];
}

function readingsTable(test: ReportTest): ReadingsTable {
  const { method, sheet } = test;
  const { fields, rowName } = method.readings;
  return {
    heading: headingOf(test),
    columns: [{ title: capitalised(rowName), unit: '' }, ...fields.map((field) => ({ title: field.label, unit: field.unit ?? '' }))],
    rows: sheet.rows.filter(isUsed).map((row) => ({
      cells: [
        row.row.replace(/^r/, ''),
        ...fields.map((field) => {
          const cell = row.cells[field.key];
          return cell ? cellText(field, cell, sheet) : '';
        }),
      ],
      voided: row.voided?.reason ?? '',
      remark: row.remark,
    })),
    corrections: test.corrections,
  };
}

function headingOf({ method, sheet }: ReportTest): string {
  return `${sheet.sample.code} · ${method.shortTitle}`;
}

function lotText({ kind, material, supplier, code }: LotView): string {
  return `${capitalised(kind)}: ${material}, lot ${code}${supplier ? ` (${supplier})` : ''}`;
}

/** A row that somebody has written in; the blank ones of the sheet are not printed. */
function isUsed(row: RowView): boolean {
  return row.voided !== null || row.remark !== '' || Object.values(row.cells).some((cell) => cell.value !== null || cell.corrections > 0);
}

/** Numbers as they were typed, a choice by its label, a trace by its file, a spectrum in words. */
function cellText(field: Field, cell: CellView, sheet: BenchSheetView): string {
  if (cell.value === null) return '';
  if (field.kind === 'choice') return field.choices.find((choice) => choice.value === cell.value)?.label ?? String(cell.value);
  if (field.kind === 'trace') {
    const trace = sheet.traces[String(cell.value)];
    return trace ? `${trace.name} (${trace.points} points)` : '';
  }
  if (field.kind === 'photo') {
    const photo = sheet.photos?.[String(cell.value)];
    return photo ? `${photo.name}: ${[photo.text, photo.intervalText].filter(Boolean).join(', ')}` : '';
  }
  if (field.kind === 'item') return sheet.items?.[String(cell.value)] ?? cell.typed.trim();
  if (field.kind === 'spectrum') return spectrumInWords(spectrumOf(String(cell.value)));
  // Its minus as in every other number of the report.
  return field.kind === 'number' ? cell.typed.trim().replace(/^-/, '−') : cell.typed.trim();
}

function valuesOf(cells: Record<string, CellView>): Record<string, CellValue> {
  return Object.fromEntries(Object.entries(cells).map(([key, { value }]) => [key, value]));
}

function withUnit(text: string, unit: string | undefined): string {
  return unit ? `${text} ${unit}` : text;
}

function capitalised(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
