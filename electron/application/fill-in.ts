import type { CellValue, Field, Method } from '../../shared-lib/method/method.ts';
import type { Draft } from './open-notebook.ts';

/**
 * What a row starts with beside its first reading: the value of the row above where the field carries down, else the
 * field's default. Recorded with an empty `typed`, so that it can be told from what was typed.
 * @param above values of the last row before that somebody has written in
 * @param given fields that this same step enters
 */
export function fillIn(testId: string, method: Method, row: string, above: Record<string, CellValue>, given: Set<string>): Draft[] {
  return method.readings.fields.flatMap((field): Draft[] => {
    const value = given.has(field.key) ? null : startValue(field, above);
    return value === null ? [] : [{ kind: 'reading.entered', body: { testId, row, key: field.key, value, typed: '' } }];
  });
}

function startValue(field: Field, above: Record<string, CellValue>): CellValue {
  if (!('carryDown' in field || 'default' in field)) return null;
  return (field.carryDown ? above[field.key] : null) ?? field.default ?? null;
}
