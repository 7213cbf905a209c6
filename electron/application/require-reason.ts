import { InputError } from '../../shared-lib/calculation/input-error.ts';

/** @throws InputError on the field `reason` when none is given */
export function requireReason(reason: string, because: string): void {
  if (reason.trim() === '') throw new InputError('reason', reason, `${because}; say in a few words why it changes.`);
}
