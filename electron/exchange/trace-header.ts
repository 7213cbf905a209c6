import { forceUnit, lengthUnit } from './trace-units.ts';
import type { CsvRow } from './csv-rows.ts';
import { isBlank } from './csv-rows.ts';

/** A column as the header names it. */
export interface TraceColumn {
  name: string;
  /** As written, '' where there is none. */
  unit: string;
  /** What it seems to hold, by its name or else its unit. */
  kind: 'displacement' | 'force' | 'other';
}

/** Words in several languages that testing machines write into headers. */
const FORCE_NAME = /force|load|kraft|\blast\b|effort|charge|fuerza|carga|forza|carico|kracht|kraf|siła|sila/i;
const DISPLACEMENT_NAME =
  /extension|displacement|position|travel|stroke|crosshead|elongation|distance|weg|verl[äa]ngerung|verschiebung|d[ée]placement|allongement|course|desplazamiento|alargamiento|spostamento|corsa|verplaatsing|slag/i;
const TIME_NAME = /time|zeit|temps|tiempo|tempo|tijd|strain|stress|width|area/i;

/**
 * Names and units of the columns from the lines above the first data row: units in brackets, behind a slash or 'in', or in
 * a line of their own below the names.
 * @param header the lines above the data, in order; may be empty.
 * @param count number of columns of the data.
 */
export function readHeader(header: CsvRow[], count: number): TraceColumn[] {
  const rows = header.filter((row) => !isBlank(row));
  let names = rows.at(-1)?.cells ?? [];
  let units: string[] = [];
  if (rows.length > 0 && isUnitRow(names)) {
    units = names.map(bare);
    names = rows.at(-2)?.cells ?? [];
  }
  // A title line with fewer cells than the data names nothing.
  if (names.filter((cell) => cell.trim() !== '').length < 2) names = [];
  return Array.from({ length: count }, (_, index) => {
    const split = splitUnit(names[index] ?? '');
    const unit = units[index] || split.unit;
    return { name: split.name, unit, kind: kindOf(split.name, unit) };
  });
}

function kindOf(name: string, unit: string): TraceColumn['kind'] {
  if (TIME_NAME.test(name)) return 'other';
  if (FORCE_NAME.test(name)) return 'force';
  if (DISPLACEMENT_NAME.test(name)) return 'displacement';
  if (forceUnit(unit)) return 'force';
  return lengthUnit(unit) ? 'displacement' : 'other';
}

/** At least one unit of force or length, and nothing in it longer than a unit. */
function isUnitRow(cells: string[]): boolean {
  const words = cells.map(bare).filter((word) => word !== '');
  return words.length > 0 && words.every((word) => word.length <= 6) && words.some((word) => forceUnit(word) ?? lengthUnit(word));
}

/** '(N)' or '[N]' without its brackets. */
function bare(cell: string): string {
  return cell.trim().replace(/^[[(]\s*(.*?)\s*[\])]$/, '$1');
}

function splitUnit(cell: string): { name: string; unit: string } {
  const text = cell.trim();
  const bracketed = /^(.*?)\s*[[(]\s*([^\])]*?)\s*[\])]\s*$/.exec(text);
  if (bracketed) return { name: bracketed[1]!, unit: bracketed[2]! };
  const behind = /^(.+?)(?:\s*\/\s*|\s+in\s+|[\s_,:]+)(\S+)$/.exec(text);
  if (behind && (forceUnit(behind[2]!) ?? lengthUnit(behind[2]!))) return { name: behind[1]!, unit: behind[2]! };
  return { name: text, unit: '' };
}
