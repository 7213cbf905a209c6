/** A cell of the bench sheet; `row` is '' for a condition. */
export interface CellPlace {
  row: string;
  key: string;
}

export type Move = 'up' | 'down' | 'left' | 'right' | 'next' | 'previous';

/**
 * The cell that a move leads to: `'new-row'` below the last row, `null` where the sheet ends.
 * @param rows ids of the rows that can be typed in, from the top
 * @param keys keys of the columns, from the left
 */
export function cellAfter(rows: string[], keys: string[], from: CellPlace, move: Move): CellPlace | 'new-row' | null {
  const row = rows.indexOf(from.row);
  const column = keys.indexOf(from.key);
  if (row < 0 || column < 0) return null;
  const at = (r: number, c: number): CellPlace | null =>
    rows[r] !== undefined && keys[c] !== undefined ? { row: rows[r], key: keys[c] } : null;
  switch (move) {
    case 'up':
      return at(row - 1, column);
    case 'down':
      return row === rows.length - 1 ? 'new-row' : at(row + 1, column);
    case 'left':
      return at(row, column - 1);
    case 'right':
      return at(row, column + 1);
    case 'next':
      return at(row, column + 1) ?? at(row + 1, 0);
    case 'previous':
      return at(row, column - 1) ?? at(row - 1, keys.length - 1);
  }
}

/** The id of the row after the highest one: rows are `r1`, `r2` … and never change their id. */
export function nextRowId(rows: string[]): string {
  const numbers = rows.map((row) => Number(/^r(\d+)$/.exec(row)?.[1] ?? 0));
  return `r${Math.max(0, ...numbers) + 1}`;
}
