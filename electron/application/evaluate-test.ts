import { InputError } from '../../shared-lib/calculation/input-error.ts';
import type { CalculationResult, Flag } from '../../shared-lib/calculation/result.ts';
import { offScale } from '../../shared-lib/method/grade-scale.ts';
import type { MethodStudy } from '../../shared-lib/method/method-study.ts';
import type { BenchReadings, BenchRow, Method } from '../../shared-lib/method/method.ts';
import { completeRows, isAsked } from '../../shared-lib/method/sheet.ts';
import type { BenchSheetView } from '../../shared-lib/notebook/views.ts';
import { severalOf } from '../../shared-lib/quantity/words.ts';
import { calculationById } from '../../shared-lib/registry/calculations.ts';
import { judgedLines } from '../../shared-lib/report/property-line.ts';
import { firstLine } from './first-line.ts';
import { rowTitle } from './sheet-rows.ts';

/** The result that follows from a test's readings as they stand. */
export interface Evaluation {
  /** It shows other tests beside this one, so that an entry on any test may change it. */
  besideOthers: boolean;
  live: BenchSheetView['live'];
  missing: BenchSheetView['missing'];
}

/**
 * Runs the method's own evaluation on the complete rows and judges what comes out. Never throws: what is missing or wrong
 * with the readings is a sentence, so that the sheet stays open for mending it.
 */
export function evaluateTest(method: Method, bench: BenchReadings, rule: 'simple' | 'guarded', studies: readonly MethodStudy[]): Evaluation {
  const incomplete = missingCondition(method, bench) ?? missingCell(method, bench);
  const complete = new Set(completeRows(method, bench).map(({ index }) => index));
  const rows = bench.rows.map((row, index) => (complete.has(index) ? row : { row: row.row, values: {} }));
  const short = missingRows(method, rows);
  const besideOthers = method.companions === true;
  if (short) return { besideOthers, live: null, missing: incomplete ?? short };
  try {
    const evaluated = method.evaluate({ ...bench, rows });
    const result = { ...evaluated, flags: [...evaluated.flags, ...offScaleFlags(method, evaluated)] };
    const lines = judgedLines(method, result, bench.limits, rule, studies);
    return { besideOthers, live: { result, lines, columns: calculationById(result.calculation)?.columns ?? [] }, missing: incomplete };
  } catch (error) {
    if (error instanceof InputError) return { besideOthers, live: null, missing: { where: error.field, text: atItsCell(method, bench, error) } };
    return { besideOthers, live: null, missing: { where: '', text: `The result could not be worked out because of a fault in the program (${firstLine(error)}).` } };
  }
}

/** A grade that lies outside its scale is shown, and said. */
function offScaleFlags({ properties }: Method, { results, figures }: CalculationResult): Flag[] {
  return properties.flatMap((property): Flag[] => {
    const readings = figures.find(({ id }) => id === property.readingsFigure)?.series.flatMap(({ role, points }) => (role === 'reading' ? points.map(({ y }) => y) : [])) ?? [];
    const text = offScale(property, results[property.key]?.value ?? null, ...readings);
    return text ? [{ code: 'off-scale', where: '', text }] : [];
  });
}

/** The message with the row in front and the field by its label, as the sheet shows them. */
function atItsCell(method: Method, bench: BenchReadings, { field, message }: InputError): string {
  const [, index, key] = /^(?:conditions|rows\[(\d+)\])\.(\w+)$/.exec(field) ?? [];
  if (!key) return message;
  const row = index === undefined ? undefined : bench.rows[Number(index)];
  const known = (row ? method.readings.fields : method.conditions).find((candidate) => candidate.key === key);
  const text = known ? message.replace(asName(key), known.label) : message;
  if (!row) return text;
  // Sentences of some calculations name the row themselves.
  const title = rowTitle(method, row.row);
  return text.startsWith(`${title} `) ? text : `${title}: ${text}`;
}

/** Where a sentence of a calculation names a field by its key. A key that is a word too, 'run' or 'a', is meant only where the sentence begins. */
function asName(key: string): RegExp {
  return new RegExp(/[A-Z0-9]/.test(key.slice(1)) ? `\\b${key}\\b` : `^${key}\\b`);
}

function missingCondition(method: Method, bench: BenchReadings): BenchSheetView['missing'] {
  const field = method.conditions.find((candidate) => candidate.required && bench.conditions[candidate.key] == null && isAsked(candidate, bench.conditions, (value) => value in (bench.references ?? {})));
  return field ? { where: `conditions.${field.key}`, text: `${field.label} is missing.` } : null;
}

/** A row that was begun and lacks something would be left out of the result; that must be seen. */
function missingCell(method: Method, bench: BenchReadings): BenchSheetView['missing'] {
  for (const [index, row] of bench.rows.entries()) {
    const field = isBegun(row) && method.readings.fields.find((candidate) => candidate.required && row.values[candidate.key] == null);
    if (field) {
      return {
        where: `rows[${index}].${field.key}`,
        text: `${rowTitle(method, row.row)} has no ${field.label.replace(/^\p{Lu}(?=\p{Ll})/u, (letter) => letter.toLowerCase())}; it counts once that is entered.`,
      };
    }
  }
  return null;
}

function missingRows(method: Method, rows: BenchRow[]): BenchSheetView['missing'] {
  const { minRows, rowName } = method.readings;
  const complete = rows.filter(isBegun).length;
  if (complete >= minRows) return null;
  return { where: '', text: `Needs ${minRows} complete ${minRows === 1 ? rowName : severalOf(rowName)}, has ${complete}.` };
}

/** A blank row of the sheet is no reading, even where the method requires no field. */
function isBegun(row: BenchRow): boolean {
  return Object.values(row.values).some((value) => value !== null);
}
