import type { CallProblem } from '../../shared-lib/api.ts';
import { InputError } from '../../shared-lib/calculation/input-error.ts';
import { firstLine } from './first-line.ts';
import { NotebookFileError } from '../store/notebook-file-error.ts';
import { Refusal } from './refusal.ts';

/** What went wrong as the screens are told it: a sentence, never a stack. */
export function problemOf(error: unknown): CallProblem {
  if (error instanceof InputError) return { code: 'input', ...error.toProblem() };
  if (error instanceof Refusal) return { code: error.code, field: '', value: null, message: error.message };
  if (error instanceof NotebookFileError) return { code: error.code === 'read-only' ? 'read-only' : 'file', field: '', value: null, message: error.message };
  return {
    code: 'internal',
    field: '',
    value: null,
    message: `That could not be done because of a fault in the program (${firstLine(error)}). What was acknowledged before is safe.`,
  };
}
