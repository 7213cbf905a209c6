import { Refusal } from '../refusal.ts';

export { UNDONE } from '../../../shared-lib/material/undone-reason.ts';

/** Somebody has gone on from there: taking it back would undo their work as well. */
export function changedSince(): Refusal {
  return new Refusal('conflict', 'It was changed since: correct it where it is shown, with a reason.');
}
