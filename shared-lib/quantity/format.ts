import type { ResultValue } from '../calculation/result.ts';

/** Shown where there is no number. */
const NONE = '—';
/** Digits of a number that stands without an interval. */
const PLAIN_SIGNIFICANT_DIGITS = 4;
const MOST_DECIMALS = 12;

/**
 * A number with a fixed count of decimals, a decimal point and the true minus sign (U+2212), in no locale.
 * Zero has no sign: −0.04 at one decimal is '0.0'.
 */
export function formatNumber(value: number, decimals: number): string {
  if (!Number.isFinite(value)) return NONE;
  const text = Math.abs(value).toFixed(Math.min(Math.max(Math.trunc(decimals), 0), MOST_DECIMALS));
  return value < 0 && Number(text) !== 0 ? `−${text}` : text;
}

/**
 * Decimals that an interval supports: its half-width keeps two significant digits when they are 10 to 35 and one when
 * it is larger (so that rounding costs at most a seventh of the half-width); whole numbers at the least.
 * Ends that coincide support four significant digits.
 * Source: rounding rule of the Particle Data Group, Review of Particle Physics, Introduction, 'Rounding'; within
 * JCGM 100:2008, 7.2.6 (at most two significant digits for an uncertainty).
 */
export function decimalsFor(low: number, high: number): number {
  const halfWidth = Math.abs(high - low) / 2;
  if (!(halfWidth > 0) || !Number.isFinite(halfWidth)) return plainDecimals(Number.isFinite(low) ? low : high);
  const [mantissa, exponent] = halfWidth.toExponential(2).split('e').map(Number) as [number, number];
  const digits = mantissa < 3.55 || mantissa >= 9.5 ? 1 : 0;
  const carried = mantissa >= 9.5 ? exponent + 1 : exponent;
  return Math.min(Math.max(digits - carried, 0), MOST_DECIMALS);
}

/** Decimals that show a lone number to four significant digits, without zeros at the end. */
export function plainDecimals(value: number): number {
  if (value === 0 || !Number.isFinite(value)) return 0;
  const rounded = Number(value.toPrecision(PLAIN_SIGNIFICANT_DIGITS));
  const exponent = Math.floor(Math.log10(Math.abs(rounded)));
  const most = Math.min(Math.max(PLAIN_SIGNIFICANT_DIGITS - 1 - exponent, 0), MOST_DECIMALS);
  const text = rounded.toFixed(most);
  return text.includes('.') ? text.replace(/0+$/, '').split('.')[1]!.length : 0;
}

/**
 * A result as the reader sees it, rounded to the digits that its interval supports:
 * `text` '38.4 mN/m', '≥ 3.1 N/15 mm', 'between 38 and 40 mN/m' or '—';
 * `intervalText` '95 % interval 37.6 to 39.2', 'range 37 to 39', one-sided 'from …' or 'up to …', or ''.
 */
export function formatValue(result: ResultValue): { text: string; intervalText: string } {
  const { value, low, high, level, bound, unit } = result;
  const decimals = low !== null && high !== null ? decimalsFor(low, high) : null;
  const show = (number: number) => formatNumber(number, decimals ?? plainDecimals(number));
  const withUnit = (text: string) => (unit === '' ? text : `${text} ${unit}`);

  if (bound === 'between') {
    const plain = (number: number) => formatNumber(number, Math.max(plainDecimals(low ?? 0), plainDecimals(high ?? 0), plainDecimals(number)));
    if (low !== null && high !== null) {
      const text = low === high ? plain(low) : `between ${plain(low)} and ${plain(high)}`;
      return { text: withUnit(text), intervalText: '' };
    }
    if (low !== null) return { text: withUnit(`≥ ${plain(low)}`), intervalText: '' };
    if (high !== null) return { text: withUnit(`≤ ${plain(high)}`), intervalText: '' };
    return { text: NONE, intervalText: '' };
  }

  const intervalText = intervalOf(low, high, level, show);
  if (value === null) return { text: NONE, intervalText };
  if (bound === 'exact') return { text: withUnit(show(value)), intervalText };
  const sign = bound === 'at-least' ? '≥' : '≤';
  const repeatsTheBound = level === null && (low ?? value) === value && (high ?? value) === value;
  return { text: withUnit(`${sign} ${show(value)}`), intervalText: repeatsTheBound ? '' : intervalText };
}

function intervalOf(low: number | null, high: number | null, level: number | null, show: (number: number) => string): string {
  if (low === null && high === null) return '';
  const percent = level === null ? null : Number((level * 100).toPrecision(6));
  const name = percent === null ? 'range' : `${formatNumber(percent, plainDecimals(percent))} % interval`;
  if (low === null) return `${name} up to ${show(high!)}`;
  if (high === null) return `${name} from ${show(low)}`;
  return `${name} ${show(low)} to ${show(high)}`;
}
