import type { Field } from '../../shared-lib/method/method.ts';
import { isAsked } from '../../shared-lib/method/sheet.ts';
import type { BenchSheet } from './bench-sheet.svelte.ts';

/** The conditions that are asked for as things stand: not those that something named from the notebook says itself. */
export function conditionsAsked(sheet: Pick<BenchSheet, 'view'>, fields: readonly Field[]): Field[] {
  const { conditions = {}, items = {} } = sheet.view ?? {};
  const values = Object.fromEntries(Object.entries(conditions).map(([key, { value }]) => [key, value]));
  return fields.filter((field) => isAsked(field, values, (value) => value in items));
}
