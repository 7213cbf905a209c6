import { InputError } from '../../../shared-lib/calculation/input-error.ts';

/** The InputError that `action` throws; fails when it throws none. */
export function refusal(action: () => unknown): InputError {
  try {
    action();
  } catch (error) {
    if (error instanceof InputError) return error;
    throw error;
  }
  throw new Error('was not refused');
}
