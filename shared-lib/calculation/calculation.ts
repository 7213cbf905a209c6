import type { z } from 'zod';
import { InputError } from './input-error.ts';
import type { CalculationResult, Flag, ResultValue, SwatchPair, TableRow, TitledTable } from './result.ts';
import type { Figure } from '../figure/figure.ts';
import type { TableColumn } from './table-column.ts';

/** What a calculation's own function returns; `runCalculation` adds id, version, cautions and sources. */
export interface Outcome {
  results: Record<string, ResultValue>;
  table?: TableRow[];
  flags?: Flag[];
  notes?: string[];
  figures?: Figure[];
  tables?: TitledTable[];
  swatches?: SwatchPair[];
  /** Cautions that only this input calls for, added to the calculation's own. */
  cautions?: string[];
  /** Sources that only this input calls for (e.g. the probe-liquid set used), added to the calculation's own. */
  sources?: string[];
}

/** A calculation, registered once under its id (`registry/calculations.ts`). */
export interface Calculation<Input = unknown> {
  id: string;
  /** Raised whenever the same input could give another answer. */
  version: string;
  title: string;
  /** Schema of the input: the public field names of the catalogue. Strict: unknown fields are refused. */
  input: z.ZodType<Input>;
  /** Pure: no clock, no randomness but a seed in the input. Throws InputError. */
  compute: (input: Input) => Outcome;
  columns: TableColumn[];
  cautions: string[];
  /** Standard and clause, paper or handbook. */
  sources: string[];
}

/** Ties a schema and its function together so that `compute` is typed by the schema. */
export function defineCalculation<Schema extends z.ZodType>(
  definition: Omit<Calculation<z.output<Schema>>, 'input'> & { input: Schema },
): Calculation {
  return definition as unknown as Calculation;
}

/**
 * No quantity of the bench, in whatever unit, is larger; beyond, powers overflow. The smallest leaves room for the residues
 * of computing that a recorded trace may hold; below, quotients overflow.
 */
const LARGEST = 1e30;
const SMALLEST = 1e-100;

/**
 * Validates `input` against the calculation's schema and computes.
 * @throws InputError naming the first field at fault, its value and what is allowed; also for a number whose size is above
 *   1e30 or, zero apart, below 1e-100, and when a result would not be finite, which no caller may ever see.
 */
export function runCalculation(calculation: Calculation, input: unknown): CalculationResult {
  const parsed = parseInput(calculation.input, input);
  refuseOutsized(parsed, []);
  const outcome = calculation.compute(parsed);
  const result: CalculationResult = {
    calculation: calculation.id,
    version: calculation.version,
    results: outcome.results,
    table: outcome.table ?? [],
    flags: outcome.flags ?? [],
    notes: outcome.notes ?? [],
    cautions: [...calculation.cautions, ...(outcome.cautions ?? [])],
    sources: [...calculation.sources, ...(outcome.sources ?? [])],
    figures: outcome.figures ?? [],
    ...(outcome.tables ? { tables: outcome.tables } : {}),
    ...(outcome.swatches ? { swatches: outcome.swatches } : {}),
  };
  refuseNonFinite(result.results, 'results');
  refuseNonFinite(result.table, 'table');
  refuseNonFinite(result.figures, 'figures');
  refuseNonFinite(result.tables ?? [], 'tables');
  return result;
}

/**
 * Parses `input` by `schema`.
 * @throws InputError for the first problem found.
 */
export function parseInput<Output>(schema: z.ZodType<Output>, input: unknown): Output {
  const parsed = schema.safeParse(input, { reportInput: true });
  if (parsed.success) return parsed.data;
  const issue = deepestIssue(parsed.error.issues[0]!);
  const value = valueAt(input, issue.path);
  throw new InputError(fieldName(issue.path), value === undefined ? null : value, issueSentence(issue, value));
}

type Issue = z.core.$ZodIssue;

/** A union reports one list of issues per branch; the branch that got furthest is the one meant, then the one whose type fits. */
function deepestIssue(issue: Issue): Issue {
  if (issue.code !== 'invalid_union') return issue;
  const branches = issue.errors.filter((branch) => branch.length > 0).map((branch) => deepestIssue(branch[0]!));
  const furthest = [...branches].sort((a, b) => b.path.length - a.path.length)[0];
  const fitting = branches.filter((branch) => branch.code !== 'invalid_type');
  const meant = furthest && furthest.path.length > 0 ? furthest : fitting.length === 1 ? fitting[0]! : null;
  return meant === null ? issue : { ...meant, path: [...issue.path, ...meant.path] };
}

function fieldName(path: PropertyKey[]): string {
  return path
    .map((part, index) => (typeof part === 'number' ? `[${part}]` : index === 0 ? String(part) : `.${String(part)}`))
    .join('');
}

function valueAt(input: unknown, path: PropertyKey[]): unknown {
  let value: unknown = input;
  for (const part of path) {
    if (value === null || typeof value !== 'object') return undefined;
    value = (value as Record<PropertyKey, unknown>)[part];
  }
  return value;
}

function issueSentence(issue: Issue, value: unknown): string {
  const field = fieldName(issue.path) || 'the input';
  const shown = describe(value);
  switch (issue.code) {
    case 'too_small': {
      const than = issue.inclusive === false ? 'more than' : 'at least';
      if (issue.origin === 'array') return `${field} needs ${than} ${counted(issue.minimum)}, not ${shown}.`;
      if (issue.origin === 'string') return `${field} must not be empty.`;
      return `${field} must be ${than} ${issue.minimum}, not ${shown}.`;
    }
    case 'too_big': {
      const than = issue.inclusive === false ? 'less than' : 'at most';
      if (issue.origin === 'array') return `${field} takes ${than} ${counted(issue.maximum)}, not ${shown}.`;
      if (issue.origin === 'string') return `${field} takes ${than} ${issue.maximum} characters.`;
      return `${field} must be ${than} ${issue.maximum}, not ${shown}.`;
    }
    case 'invalid_type':
      if (value === Infinity || value === -Infinity) return `${field} is too large to compute with; check its power of ten and its unit.`;
      return value === undefined || value === null
        ? `${field} is missing; it must be ${withArticle(issue.expected)}.`
        : `${field} must be ${withArticle(issue.expected)}, not ${shown}.`;
    case 'invalid_value':
      return `${field} must be one of ${issue.values.map(String).join(', ')}, not ${shown}.`;
    case 'unrecognized_keys':
      return `${field} has a field that is not known here: ${issue.keys.join(', ')}.`;
    case 'invalid_union':
      if (value === undefined || value === null) return `${field} is missing.`;
      return `${field} has none of the forms that are allowed here, found ${shown}.`;
    case 'not_multiple_of':
      return `${field} must be a multiple of ${issue.divisor}, not ${shown}.`;
    default:
      return issue.message;
  }
}

function counted(count: number | bigint): string {
  return `${count} ${Number(count) === 1 ? 'entry' : 'entries'}`;
}

/** The schema library's names of types, in words. */
function withArticle(expected: string): string {
  if (expected === 'boolean') return 'yes or no (true or false)';
  const word = { int: 'whole number', array: 'list', string: 'text', record: 'object' }[expected] ?? expected;
  return `${/^[aeiou]/.test(word) ? 'an' : 'a'} ${word}`;
}

function describe(value: unknown): string {
  if (value === undefined) return 'nothing';
  if (typeof value === 'number') return String(value);
  if (typeof value === 'string') return value.length > 40 ? `"${value.slice(0, 40)}…"` : `"${value}"`;
  if (Array.isArray(value)) return `a list of ${value.length}`;
  return typeof value === 'object' ? 'an object' : String(value);
}

/** @param path of `value`; one list for the whole walk, since an input may be a trace of many thousand points */
function refuseOutsized(value: unknown, path: PropertyKey[]): void {
  if (typeof value === 'number') {
    const size = Math.abs(value);
    if (size > LARGEST || (size > 0 && size < SMALLEST)) {
      const fault = size > LARGEST ? 'large' : 'small';
      throw new InputError(fieldName(path), value, `${fieldName(path)} is too ${fault} to compute with (${value}); check its power of ten and its unit.`);
    }
  } else if (value !== null && typeof value === 'object') {
    for (const [key, item] of Array.isArray(value) ? value.entries() : Object.entries(value)) {
      path.push(key);
      refuseOutsized(item, path);
      path.pop();
    }
  }
}

function refuseNonFinite(value: unknown, where: string): void {
  if (typeof value === 'number') {
    if (!Number.isFinite(value)) {
      throw new InputError(where, null, 'These readings lead to a number that is too large to be given; check them and their units.');
    }
  } else if (Array.isArray(value)) {
    value.forEach((item, index) => refuseNonFinite(item, `${where}[${index}]`));
  } else if (value !== null && typeof value === 'object') {
    for (const [key, item] of Object.entries(value)) refuseNonFinite(item, `${where}.${key}`);
  }
}
