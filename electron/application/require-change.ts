import { onlyChanged } from '../../shared-lib/notebook/only-changed.ts';
import { replacesSomething } from '../../shared-lib/notebook/replaces-something.ts';
import { Refusal } from './refusal.ts';
import { requireReason } from './require-reason.ts';

/**
 * That something is said anew and, where it takes the place of something said, why.
 * @returns the reason as it is recorded
 * @throws Refusal when nothing differs; InputError on `reason` when none is given where it is needed
 */
export function requireChange<Fields extends object>(before: Fields, after: Fields, reason: string): string {
  if (Object.keys(onlyChanged(before, after)).length === 0) throw new Refusal('conflict', 'Nothing was changed.');
  if (replacesSomething(before, after)) requireReason(reason, 'This takes the place of something that was said before');
  return reason.trim();
}
