import { Refusal } from '../refusal.ts';

/** The reason that stands with every entry that undoes another. */
export const UNDONE = 'undone';

/** Somebody has gone on from there: taking it back would undo their work as well. */
export function changedSince(): Refusal {
  return new Refusal('conflict', 'It was changed since: correct it where it is shown, with a reason.');
}
