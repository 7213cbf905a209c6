import type { Flag } from '../calculation/result.ts';
import type { MethodData } from '../method/method.ts';

/**
 * Where a flag of this method applies, in the words of its bench sheet: `rows[5].forceN` is 'specimen 6',
 * `conditions.stripWidthMm` or `stripWidthMm` 'Strip width', a key of its properties their title.
 * What is in words already stays; '' for a path that only the calculation knows: its index need not be that of a row.
 */
export function flagPlace(method: MethodData, where: string): string {
  const row = /^rows\[(\d+)\]/.exec(where)?.[1];
  if (row !== undefined) return `${method.readings.rowName} ${Number(row) + 1}`;
  const key = where.replace(/^conditions\./, '');
  const condition = method.conditions.find((field) => field.key === key);
  if (condition) return condition.label;
  const property = method.properties.find((candidate) => candidate.key === key);
  if (property) return property.title;
  return isPath(where) ? '' : where;
}

/** The flag with its place in words, or without one where the text names it itself. */
export function flagInWords(method: MethodData, flag: Flag): Flag {
  const place = flagPlace(method, flag.where);
  return { ...flag, where: place !== '' && names(flag.text, place) ? '' : place };
}

/** A field name or a path of them: `specimens[2]`, `readings[0].density`, `requiredNPer15mm`. */
function isPath(where: string): boolean {
  return /^[a-z]\w*(?:[[.]\S*)$/.test(where) || /^[a-z]+[A-Z]\w*$/.test(where);
}

/** 'specimen 1' is not named by 'specimen 12'. */
function names(text: string, place: string): boolean {
  const at = text.toLowerCase().indexOf(place.toLowerCase());
  return at >= 0 && !/^[\p{L}\p{N}]/u.test(text.slice(at + place.length));
}
