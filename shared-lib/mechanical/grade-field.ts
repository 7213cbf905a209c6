import { z } from 'zod';
import type { NumberField } from '../method/method.ts';

/** Whole grades of a print after a mechanical test, 5 unharmed to 0. */
export const gradeSchema = z.int().min(0).max(5);

/** A cell for such a grade; the arrow keys step through the scale. */
export function gradeField(required: boolean, hint: string): NumberField {
  return { kind: 'number', key: 'grade', label: 'Grade', min: 0, max: 5, steps: [0, 1, 2, 3, 4, 5], required, hint };
}
