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
  const simple = readDigits(cell, decimal.charCodeAt(0));
  if (!Number.isNaN(simple)) return simple;
  let text = plainMinus(cell);
  if (!PLAIN.test(text) || text.includes(decimal === '.' ? ',' : '.')) {
    const grouped = GROUPED.exec(text);
    if (!grouped || grouped[1] === decimal) return null;
    text = text.replaceAll(grouped[1]!, '');
  }
  return Number(decimal === ',' ? text.replace(',', '.') : text);
}

const ZERO = 48;
const MINUS = 45;
const PLUS = 43;
/** So many digits make a whole number that a double holds exactly; one division then rounds as the language itself does. */
const MOST_DIGITS = 15;
const POWERS_OF_TEN = Array.from({ length: MOST_DIGITS + 1 }, (_, exponent) => Number(`1e${exponent}`));

/** Digits with at most one decimal mark among them, read in place: a trace has hundreds of thousands. NaN for all else. */
function readDigits(cell: string, mark: number): number {
  const sign = cell.charCodeAt(0);
  let digits = 0;
  let whole = 0;
  let decimals = -1;
  for (let index = sign === MINUS || sign === PLUS ? 1 : 0; index < cell.length; index += 1) {
    const code = cell.charCodeAt(index);
    if (code >= ZERO && code <= ZERO + 9) {
      whole = 10 * whole + (code - ZERO);
      digits += 1;
      if (decimals >= 0) decimals += 1;
    } else if (code === mark && decimals < 0 && digits > 0) decimals = 0;
    else return Number.NaN;
  }
  if (digits === 0 || digits > MOST_DIGITS) return Number.NaN;
  const value = decimals > 0 ? whole / POWERS_OF_TEN[decimals]! : whole;
  return sign === MINUS ? -value : value;
}

function plainMinus(cell: string): string {
  return cell.trim().replace('\u2212', '-');
}
