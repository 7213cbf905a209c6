import { Refusal } from '../../refusal.ts';

/** Stands in for a use case until it is there. */
export function pending(): never {
  throw new Refusal('not-found', 'This cannot be worked out yet.');
}
