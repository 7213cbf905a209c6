import type { Entry } from '../../../shared-lib/notebook/entry.ts';
import type { Draft, OpenNotebook } from '../open-notebook.ts';
import { entriesOfTest } from '../queries/entries.ts';
import { Refusal } from '../refusal.ts';
import { requireWithdrawable } from '../use-cases/test-withdraw.ts';
import { isCellEntry, undoCell } from './undo-cell.ts';
import { UNDONE } from './undone.ts';
import { undoLimits, undoRow } from './undo-on-sheet.ts';
import { undoThing } from './undo-thing.ts';
import { whatStays } from './what-stays.ts';

/**
 * The entries that take an action back: corrections with what stood before, never a removal.
 * @throws Refusal with the reason when one of its entries cannot be taken back
 */
export function undoDrafts(notebook: OpenNotebook, action: Entry[]): Draft[] {
  const stays = action.map(({ kind }) => whatStays[kind]).find((advice) => advice !== undefined);
  if (stays) throw new Refusal('conflict', stays);
  return action.toReversed().flatMap((entry) => undoEntry(notebook, entry));
}

function undoEntry(notebook: OpenNotebook, entry: Entry): Draft[] {
  const standing = (testId: string) => notebook.history.standing(entriesOfTest(notebook.store, testId));
  if (isCellEntry(entry)) return undoCell(notebook.store, standing(entry.body.testId), entry);
  switch (entry.kind) {
    case 'row.voided':
    case 'row.restored':
    case 'row.remarked':
      return undoRow(standing(entry.body.testId), entry);
    case 'limits.set':
      return undoLimits(standing(entry.body.testId), entry);
    case 'test.started':
      requireWithdrawable(notebook, entry.body.testId);
      return [{ kind: 'test.withdrawn', body: { testId: entry.body.testId, reason: UNDONE } }];
    case 'attachment.added':
      // The file is kept; what it was put with is taken back.
      return [];
    default:
      return undoThing(notebook.store, entry);
  }
}
