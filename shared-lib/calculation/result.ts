import type { Figure } from '../figure/figure.ts';
import type { TableColumn } from './table-column.ts';
import { z } from 'zod';

/**
 * How `value` is to be read.
 * - `exact`: `value` is an estimate, `low`–`high` its interval.
 * - `at-least` / `at-most`: `value` is a bound (all readings were censored on one side); the open side is `null`.
 * - `between`: nothing better than `low`–`high` is known; `value` is its middle, for drawing and sorting only.
 */
export type Bound = 'exact' | 'at-least' | 'at-most' | 'between';

/** One property with its uncertainty. Never holds NaN or Infinity: what cannot be given is `null` and a note says why. */
export interface ResultValue {
  value: number | null;
  /** The value in words, where it stands for a word: a verdict, a half grade ('4-5'). */
  text?: string;
  /** Unit as printed, `''` for a pure number. */
  unit: string;
  /** Ends of the interval, or `null` where it cannot be given. */
  low: number | null;
  high: number | null;
  /** Confidence level of the interval as a fraction, `null` for a stated range (a bracket, a tolerance). */
  level: number | null;
  /** Number of readings the value stands on. */
  n: number;
  bound: Bound;
}

/** A doubtful reading or a limit of the method that the reader must know of. Flagged, never dropped. */
export interface Flag {
  /** Stable kebab-case code. */
  code: string;
  /** The reading, row or input field it concerns, `''` for the whole. */
  where: string;
  /** One sentence for the reader. */
  text: string;
}

export type TableCell = number | string | boolean | null;
export type TableRow = Record<string, TableCell>;

/** What every calculation returns, on the bench, in `laydown calc` and in the tests alike. */
export interface CalculationResult {
  calculation: string;
  version: string;
  results: Record<string, ResultValue>;
  table: TableRow[];
  flags: Flag[];
  notes: string[];
  cautions: string[];
  sources: string[];
  figures: Figure[];
  /** Small tables beside the one per row, each with its own columns. */
  tables?: TitledTable[];
  /** Colours to look at side by side. */
  swatches?: SwatchPair[];
}

/** A table with its heading, e.g. one print against several references. */
export interface TitledTable {
  title: string;
  columns: TableColumn[];
  rows: TableRow[];
}

/** Two colours that touch, as a screen or printer shows them. */
export interface SwatchPair {
  title: string;
  left: Swatch;
  right: Swatch;
  /** What must be said beside it: that it is approximate, or that a colour lies beyond what screens show. */
  note: string;
}

export interface Swatch {
  name: string;
  /** #rrggbb, sRGB. */
  colour: string;
}

const finiteOrNull = z.number().nullable();

/** Schema of a stored or transmitted result value. */
export const resultValueSchema: z.ZodType<ResultValue> = z.object({
  value: finiteOrNull,
  text: z.string().optional(),
  unit: z.string(),
  low: finiteOrNull,
  high: finiteOrNull,
  level: finiteOrNull,
  n: z.number().int().nonnegative(),
  bound: z.enum(['exact', 'at-least', 'at-most', 'between']),
});
