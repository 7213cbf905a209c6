import { InputError } from '../../shared-lib/calculation/input-error.ts';
import type { TraceReading } from '../../shared-lib/notebook/entry.ts';
import { decimalEvidence, looksNumeric, readCsvNumber, type DecimalMark } from './csv-number.ts';
import type { CsvRow } from './csv-rows.ts';
import type { TraceBlock } from './trace-blocks.ts';
import type { TraceColumn } from './trace-header.ts';
import { FORCE_UNITS, forceUnit, LENGTH_UNITS, lengthUnit } from './trace-units.ts';

/**
 * The decimal mark of a file's numbers.
 * @throws InputError (`reading.decimal`) where every mark could split thousands as well, or where lines contradict.
 */
export function decimalOf(rows: CsvRow[], delimiter: string): DecimalMark {
  const seen: Partial<Record<'.' | ',' | 'ambiguous', { line: number; cell: string }>> = {};
  for (const row of rows) {
    for (const cell of row.cells) {
      const evidence = decimalEvidence(cell);
      if (evidence !== 'none' && !seen[evidence] && looksNumeric(cell)) seen[evidence] = { line: row.line, cell: cell.trim() };
    }
  }
  if (seen['.'] && seen[',']) {
    throw new InputError(
      'reading.decimal',
      seen[','].cell,
      `Line ${seen['.'].line} writes decimals with a point (${seen['.'].cell}), line ${seen[','].line} with a comma (${seen[','].cell}): say which is the decimal mark.`,
    );
  }
  if (seen['.']) return '.';
  if (seen[',']) return ',';
  if (!seen.ambiguous) return '.';
  // A point where commas split the columns is a decimal point: nobody groups thousands by points there.
  if (delimiter === ',' && seen.ambiguous.cell.includes('.')) return '.';
  throw new InputError(
    'reading.decimal',
    seen.ambiguous.cell,
    `Line ${seen.ambiguous.line}: ${seen.ambiguous.cell} can be read in two ways, with a decimal mark or with thousands split: say which is the decimal mark.`,
  );
}

type ColumnField = 'displacementColumn' | 'forceColumn';

/**
 * Which columns hold displacement and force: as given, else by their names and units, else, of two columns without names,
 * the one that rises is the displacement.
 * @throws InputError (`reading.displacementColumn`, `reading.forceColumn`) where it cannot be told.
 */
export function chooseColumns(
  columns: TraceColumn[],
  block: TraceBlock,
  decimal: DecimalMark,
  given: Partial<Pick<TraceReading, ColumnField>>,
): Pick<TraceReading, ColumnField> {
  for (const field of ['displacementColumn', 'forceColumn'] as const) {
    const column = given[field];
    if (column !== undefined && column >= columns.length) {
      throw new InputError(`reading.${field}`, column, `Line ${lineOf(block)} has ${columns.length} columns; column ${column + 1} does not exist.`);
    }
  }
  const named = (kind: TraceColumn['kind']) => {
    const index = columns.findIndex((column) => column.kind === kind);
    return index === -1 ? undefined : index;
  };
  let displacementColumn = given.displacementColumn ?? named('displacement');
  let forceColumn = given.forceColumn ?? named('force');
  if (columns.length === 2) {
    displacementColumn ??= forceColumn === undefined ? onlyRising(block, decimal) : 1 - forceColumn;
    forceColumn ??= displacementColumn === undefined ? undefined : 1 - displacementColumn;
  }
  if (displacementColumn === undefined) throw cannotTell('displacementColumn', columns, block);
  if (forceColumn === undefined) throw cannotTell('forceColumn', columns, block);
  if (displacementColumn === forceColumn) {
    throw new InputError('reading.forceColumn', forceColumn, `Column ${forceColumn + 1} cannot hold both the displacement and the force.`);
  }
  return { displacementColumn, forceColumn };
}

/** @throws InputError (`reading.displacementUnit`) where the file does not say a unit that is known. */
export function displacementUnitOf(column: TraceColumn, block: TraceBlock): TraceReading['displacementUnit'] {
  const unit = lengthUnit(column.unit);
  if (!unit) throw unitMissing('displacementUnit', 'displacement', column, block, LENGTH_UNITS);
  return unit;
}

/** @throws InputError (`reading.forceUnit`) where the file does not say a unit that is known. */
export function forceUnitOf(column: TraceColumn, block: TraceBlock): TraceReading['forceUnit'] {
  const unit = forceUnit(column.unit);
  if (!unit) throw unitMissing('forceUnit', 'force', column, block, FORCE_UNITS);
  return unit;
}

/** Of two columns without names the one that never falls and ends higher, if there is just one. */
function onlyRising(block: TraceBlock, decimal: DecimalMark): number | undefined {
  const rising = [0, 1].filter((column) => {
    const values = block.rows.map((row) => readCsvNumber(row.cells[column] ?? '', decimal) ?? Number.NaN);
    return values.every((value, index) => index === 0 || value >= values[index - 1]!) && values.at(-1)! > values[0]!;
  });
  return rising.length === 1 ? rising[0] : undefined;
}

function cannotTell(field: ColumnField, columns: TraceColumn[], block: TraceBlock): InputError {
  const what = field === 'forceColumn' ? 'force' : 'displacement';
  const names = columns.map((column, index) => `${index + 1}${column.name ? ` ${column.name}` : ''}`).join(', ');
  return new InputError(`reading.${field}`, null, `The lines above line ${lineOf(block)} do not say which column holds the ${what}; choose one of ${names}.`);
}

function unitMissing(field: string, what: string, column: TraceColumn, block: TraceBlock, allowed: readonly string[]): InputError {
  const found = column.unit ? `give the ${what} in ${column.unit}, which is not known here` : `do not give the unit of the ${what}`;
  return new InputError(`reading.${field}`, column.unit || null, `The lines above line ${lineOf(block)} ${found}; choose one of ${allowed.join(', ')}.`);
}

function lineOf(block: TraceBlock): number {
  return block.rows[0]?.line ?? 1;
}
