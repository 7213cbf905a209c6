import { InputError } from '../calculation/input-error.ts';

/**
 * Runs `compute` and turns its refusal (RangeError) into one that names the input field.
 * @throws InputError
 */
export function refuseAs<Answer>(field: string, value: unknown, compute: () => Answer): Answer {
  try {
    return compute();
  } catch (error) {
    if (error instanceof RangeError) throw new InputError(field, value, error.message);
    throw error;
  }
}
