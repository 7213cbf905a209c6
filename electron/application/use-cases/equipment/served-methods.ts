import { InputError } from '../../../../shared-lib/calculation/input-error.ts';
import type { Workplace } from '../../workplace.ts';

/** Each id once. @throws InputError on `methodIds` for a method that is not known */
export function knownMethods({ notebook }: Workplace, methodIds: readonly string[]): string[] {
  const unknown = methodIds.find((methodId) => !notebook.methods.find(methodId));
  if (unknown !== undefined) throw new InputError('methodIds', unknown, `There is no method ${unknown}.`);
  return [...new Set(methodIds)];
}

export function methodTitles({ notebook }: Workplace, methodIds: readonly string[]): string[] {
  return methodIds.map((methodId) => notebook.methods.find(methodId)?.shortTitle ?? methodId);
}
