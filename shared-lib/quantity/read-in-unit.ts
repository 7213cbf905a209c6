import { readDecimal, type ReadDecimal } from './decimal.ts';

/** A number as typed for what has this unit, with the unit behind it or without; any other is left for the number to stumble over. @param unit '' for none */
export function readInUnit(typed: string, unit: string): ReadDecimal {
  const text = typed.trim();
  return readDecimal(unit && text.endsWith(unit) ? text.slice(0, -unit.length).trimEnd() : text);
}
