import { InputError } from '../../shared-lib/calculation/input-error.ts';
import type { NotebookStore } from '../store/notebook-store.ts';
import { findLot } from './queries/lots.ts';

/** Each lot once. @throws InputError on `lotIds[…]` for a lot that is not in the notebook */
export function knownLots(store: NotebookStore, lotIds: readonly string[]): string[] {
  const unknown = lotIds.findIndex((lotId) => !findLot(store, lotId));
  if (unknown !== -1) throw new InputError(`lotIds[${unknown}]`, lotIds[unknown], 'This lot is not in the notebook.');
  return [...new Set(lotIds)];
}
