export type DecimalMark = '.' | ',';

const PLAIN = /^[+-]?(?:\d+(?:[.,]\d*)?|[.,]\d+)(?:[eE][+-]?\d+)?$/;
/** Groups of three split by the same mark throughout, then perhaps decimals behind another mark. */
const GROUPED = /^[+-]?\d{1,3}(?:([.,' \u00a0\u202f\u2019])\d{3})(?:\1\d{3})*(?:(?!\1)[.,]\d*)?$/;
const THOUSAND_OR_DECIMALS = /^[+-]?[1-9]\d{0,2}[.,]\d{3}$/;

/** Whether a cell can be read as a number with one decimal mark or the other. */
export function looksNumeric(cell: string): boolean {
  const text = plainMinus(cell);
  return PLAIN.test(text) || GROUPED.test(text);
}

/**
 * What one numeric cell tells of the decimal mark: the mark itself, `ambiguous` where it could as well split thousands
 * ('1,234'), or `none` where it holds no mark.
 */
export function decimalEvidence(cell: string): DecimalMark | 'ambiguous' | 'none' {
  const point = cell.lastIndexOf('.');
  const comma = cell.lastIndexOf(',');
  if (point < 0 && comma < 0) return 'none';
  if (point >= 0 && comma >= 0) return point > comma ? '.' : ',';
  const mark: DecimalMark = point >= 0 ? '.' : ',';
  const other: DecimalMark = mark === '.' ? ',' : '.';
  if (cell.indexOf(mark) !== cell.lastIndexOf(mark)) return other;
  return THOUSAND_OR_DECIMALS.test(plainMinus(cell)) ? 'ambiguous' : mark;
}

/** A cell as a number with the given decimal mark; `null` when it is none. The other mark may only split thousands. */
export function readCsvNumber(cell: string, decimal: DecimalMark): number | null {
  let text = plainMinus(cell);
  if (!PLAIN.test(text) || text.includes(decimal === '.' ? ',' : '.')) {
    const grouped = GROUPED.exec(text);
    if (!grouped || grouped[1] === decimal) return null;
    text = text.replaceAll(grouped[1]!, '');
  }
  return Number(decimal === ',' ? text.replace(',', '.') : text);
}

function plainMinus(cell: string): string {
  return cell.trim().replace('\u2212', '-');
}
