import path from 'node:path';
import type { CallProblem } from '../../shared-lib/api.ts';
import { InputError } from '../../shared-lib/calculation/input-error.ts';
import { firstLine } from './first-line.ts';
import { isSystemError, NotebookFileError, reasonOf } from '../store/notebook-file-error.ts';
import { Refusal } from './refusal.ts';
import { TooEarly } from './signing/too-early.ts';

/** What went wrong as the screens are told it: a sentence, never a stack. */
export function problemOf(error: unknown): CallProblem {
  if (error instanceof TooEarly) return { code: 'input', ...error.toProblem(), waitSeconds: error.waitSeconds };
  if (error instanceof InputError) return { code: 'input', ...error.toProblem() };
  if (error instanceof Refusal) return { code: error.code, field: '', value: null, message: error.message };
  if (error instanceof NotebookFileError) return { code: error.code === 'read-only' ? 'read-only' : 'file', field: '', value: null, message: error.message };
  if (isSystemError(error)) {
    const file = error.path === undefined ? 'A file' : path.basename(error.path);
    return { code: 'file', field: '', value: null, message: `${file} cannot be read or written: ${reasonOf(error)}.` };
  }
  return {
    code: 'internal',
    field: '',
    value: null,
    message: `That could not be done because of a fault in the program (${firstLine(error)}). What was acknowledged before is safe.`,
  };
}
