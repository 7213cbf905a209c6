import { InputError } from '../../calculation/input-error.ts';
import type { Censored } from '../../statistics/censored-normal.ts';
import type { WrittenReading } from './written-method.ts';

/** One reading of one row. A yes is 1, a no 0. */
export interface ReadValue {
  /** Place in the list of values, and so of its row. */
  index: number;
  value: number;
  /** The end was not reached: the true value is this or higher. */
  orMore: boolean;
}

/** Everything that was read under one name. */
export interface ReadingColumn {
  key: string;
  label: string;
  unit: string;
  kind: WrittenReading['kind'];
  read: ReadValue[];
  /** Of a grade: its scale in rising order, each grade with its meaning. */
  grades: { grade: number; meaning: string }[];
}

/** The same as the likelihood takes it. */
export function censoredOf({ value, orMore }: ReadValue): Censored {
  return { low: value, high: orMore ? null : value };
}

/**
 * Takes only values that the kind of the reading allows.
 * @param field the list's place in the input
 * @throws InputError naming the value, e.g. `readings[0].values[3]`
 */
export function checkColumn({ kind, label, read, grades }: ReadingColumn, field: string): void {
  for (const { index, value } of read) {
    const at = `${field}.values[${index}]`;
    if (kind === 'count' && (!Number.isInteger(value) || value < 0)) throw new InputError(at, value, `${label} is a count: a whole number, 0 or more, not ${value}.`);
    if (kind === 'yes-no' && value !== 0 && value !== 1) throw new InputError(at, value, `${label} is a yes (1) or a no (0), not ${value}.`);
    if (kind === 'grade' && !grades.some(({ grade }) => grade === value)) {
      throw new InputError(at, value, `${label} is one of the grades ${grades.map(({ grade }) => grade).join(', ')}, not ${value}.`);
    }
  }
}
