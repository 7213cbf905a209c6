import type { CellView } from '../../../shared-lib/notebook/views.ts';
import type { CellAction } from '../../state/cell-keys.ts';
import type { PendingCell } from '../../state/bench-sheet.svelte.ts';
import type { CellPlace } from '../../state/sheet-grid.ts';

/** What every cell of the bench sheet is given, whatever it holds. */
export interface CellProps<CellField> {
  field: CellField;
  place: CellPlace;
  /** Row and column in words, with the unit. */
  label: string;
  cell: CellView | undefined;
  pending: PendingCell | undefined;
  /** What the row will start with here. */
  offered: string;
  /** What stands above in the same column. */
  above: string;
  locked: boolean;
  oncommit: (typed: string) => void;
  /** A key that leads on; `typed` is what is to be entered first, `null` when nothing changed. Returns false when there is nowhere to go. */
  onaction: (action: CellAction, typed: string | null) => boolean;
  onpaste?: (pasted: string) => void;
}
