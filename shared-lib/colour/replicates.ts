import { z } from 'zod';
import { InputError } from '../calculation/input-error.ts';

/** One reading, or a list of replicate readings. */
export const oneOrMore = <Item extends z.ZodType>(item: Item) => z.union([item, z.array(item).min(1).max(1000)]);

/** Replicates as a list. */
export function listOf(value: number | readonly number[]): readonly number[] {
  return typeof value === 'number' ? [value] : value;
}

/**
 * Replicate readings that belong together, set by set. A quantity read once holds for all sets.
 * @throws InputError for lists of different length.
 */
export function inStep<Key extends string>(readings: Record<Key, number | readonly number[]>): Record<Key, number>[] {
  const lists = (Object.entries(readings) as [Key, number | readonly number[]][]).map(([key, value]) => [key, listOf(value)] as const);
  const [longest, most] = lists.reduce((one, other) => (other[1].length > one[1].length ? other : one));
  const odd = lists.find(([, list]) => list.length !== 1 && list.length !== most.length);
  if (odd) {
    throw new InputError(odd[0], odd[1].length, `${odd[0]} has ${odd[1].length} readings and ${longest} has ${most.length}; each set needs all of them.`);
  }
  return most.map((_, index) => Object.fromEntries(lists.map(([key, list]) => [key, list.length === 1 ? list[0]! : list[index]!])) as Record<Key, number>);
}
