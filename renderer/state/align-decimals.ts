const figureSpace = '\u2007';
const punctuationSpace = '\u2008';

/**
 * Pads the numbers of a column so that their decimal signs stand under each other when set flush right in tabular
 * figures. Cells that are not numbers stay as they are.
 */
export function alignDecimals(cells: string[]): string[] {
  const decimals = cells.map((cell) => (isNumber(cell) ? (/[.,](\d+)$/.exec(cell)?.[1]?.length ?? 0) : null));
  const most = Math.max(0, ...decimals.filter((count) => count !== null));
  return cells.map((cell, index) => {
    const count = decimals[index];
    if (count == null || count === most) return cell;
    return cell + (count === 0 ? punctuationSpace : '') + figureSpace.repeat(most - count);
  });
}

function isNumber(text: string): boolean {
  return /^[−+-]?\d+([.,]\d+)?$/.test(text);
}
