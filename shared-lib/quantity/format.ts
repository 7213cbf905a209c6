import type { ResultValue } from '../calculation/result.ts';

/** Shown where there is no number. */
export const NO_NUMBER = '—';
/** Digits of a number that stands without an interval. */
const PLAIN_SIGNIFICANT_DIGITS = 4;
const MOST_DECIMALS = 12;
/** Added to tell a number from its limit. */
const MOST_MORE_DECIMALS = 4;

/**
 * A number with a fixed count of decimals, a decimal point and the true minus sign (U+2212), in no locale.
 * Zero has no sign: −0.04 at one decimal is '0.0'.
 */
export function formatNumber(value: number, decimals: number): string {
  if (!Number.isFinite(value)) return NO_NUMBER;
  const text = Math.abs(value).toFixed(Math.min(Math.max(Math.trunc(decimals), 0), MOST_DECIMALS));
  return value < 0 && Number(text) !== 0 ? `−${text}` : text;
}

/**
 * Decimals that an interval supports: two significant digits of its half-width, whole numbers at the least. One digit
 * would do for a small interval, but could hide on which side of a limit it ends.
 * Ends that coincide support four significant digits.
 * Source: JCGM 100:2008, 7.2.6 (an uncertainty has at most two significant digits, the estimate as many decimals).
 */
export function decimalsFor(low: number, high: number): number {
  const halfWidth = Math.abs(high - low) / 2;
  if (!(halfWidth > 0) || !Number.isFinite(halfWidth)) return plainDecimals(Number.isFinite(low) ? low : high);
  const exponent = Number(halfWidth.toExponential(1).split('e')[1]);
  return Math.min(Math.max(1 - exponent, 0), MOST_DECIMALS);
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

/** A lone number to four significant digits, without zeros at the end. */
export function formatPlain(value: number): string {
  return formatNumber(value, plainDecimals(value));
}

/**
 * Decimals that all numbers of one column share: four significant digits of the largest, up to three decimals more until
 * each keeps its size to 5 %. `null` where even that would not show the small ones; each then needs its own.
 */
export function columnDecimals(values: readonly number[]): number | null {
  const numbers = values.filter((value) => value !== 0 && Number.isFinite(value));
  if (numbers.length === 0) return 0;
  const largest = Math.max(...numbers.map(Math.abs));
  const supported = Math.max(PLAIN_SIGNIFICANT_DIGITS - 1 - Math.floor(Math.log10(largest)), 0);
  const least = Math.min(Math.max(...numbers.map(plainDecimals)), supported);
  const shows = (decimals: number) => numbers.every((value) => Math.abs(Number(value.toFixed(decimals)) - value) <= 0.05 * Math.abs(value));
  return [0, 1, 2, 3].map((more) => least + more).find((decimals) => decimals <= MOST_DECIMALS && shows(decimals)) ?? null;
}

/**
 * A result as the reader sees it, rounded to the digits that its interval supports:
 * `text` '38.4 mN/m', '≥ 3.1 N/15 mm', 'between 38 and 40 mN/m', the value in words where it has any, or '—';
 * `intervalText` '95 % interval 37.6 to 39.2', 'range 37 to 39', one-sided 'from …' or 'up to …', or ''.
 * @param limits numbers that the result is compared with: up to four decimals more, until value and ends stand on the
 *   same side of each of them in print as in truth
 * @param decimals in place of those that the interval supports, where a column shares them
 */
export function formatValue(result: ResultValue, limits: readonly number[] = [], decimals?: number): { text: string; intervalText: string } {
  const { value, low, high, level, bound, unit } = result;
  const show = decimals === undefined ? withDecimals(result, limits) : (number: number) => formatNumber(number, decimals);
  const withUnit = (text: string) => (unit === '' ? text : `${text} ${unit}`);

  if (bound === 'between') {
    const text = result.text ?? bracketText(low, high, show);
    return { text: text === NO_NUMBER ? text : withUnit(text), intervalText: '' };
  }

  const intervalText = intervalOf(low, high, level, show);
  const text = result.text ?? (value === null ? null : show(value));
  if (text === null) return { text: NO_NUMBER, intervalText };
  if (bound === 'exact') return { text: withUnit(text), intervalText };
  const sign = bound === 'at-least' ? '≥' : '≤';
  const repeatsTheBound = level === null && (low ?? value) === value && (high ?? value) === value;
  return { text: withUnit(`${sign} ${text}`), intervalText: repeatsTheBound ? '' : intervalText };
}

/** A result with its interval behind it, where it has one: '38.4 mN/m (95 % interval 37.6 to 39.2)'. */
export function formatWithInterval(result: ResultValue): string {
  const { text, intervalText } = formatValue(result);
  return intervalText === '' ? text : `${text} (${intervalText})`;
}

type Show = (number: number) => string;

/**
 * Decimals that results printed under each other share: as many as the middle one of them needs for itself, so that
 * neither a single very sharp result nor a very vague one sets the digits of all.
 */
export function sharedDecimals(results: readonly ResultValue[]): number {
  const each = results.flatMap(({ value, low, high, bound }) => {
    if (bound !== 'between' && low !== null && high !== null && low < high) return [decimalsFor(low, high)];
    return value === null && low === null && high === null ? [] : [Math.max(...[value, low, high].map((number) => plainDecimals(number ?? 0)))];
  });
  return each.sort((a, b) => a - b)[Math.floor(each.length / 2)] ?? 0;
}

/** How the numbers of one result are printed: with common decimals where there are two ends. */
function withDecimals({ value, low, high, level, bound }: ResultValue, limits: readonly number[]): Show {
  const ends = [low, high].filter((end) => end !== null);
  const decimalsOf = (number: number): number => {
    if (bound === 'between') return Math.max(...[...ends, number].map(plainDecimals));
    if (ends.length < 2) return plainDecimals(number);
    const supported = decimalsFor(ends[0]!, ends[1]!);
    // A stated range, of grades or single readings, has no more digits than its numbers.
    return level === null ? Math.min(supported, Math.max(...[...ends, value ?? 0].map(plainDecimals))) : supported;
  };
  const numbers = value === null || bound === 'between' ? ends : [...ends, value];
  const keepsSides = (more: number) =>
    numbers.every((number) => limits.every((limit) => Math.sign(Number(number.toFixed(Math.min(decimalsOf(number) + more, MOST_DECIMALS))) - limit) === Math.sign(number - limit)));
  // Where four more do not tell them apart, the difference is one of computing.
  const more = [0, 1, 2, 3, MOST_MORE_DECIMALS].find(keepsSides) ?? 0;
  return (number) => formatNumber(number, decimalsOf(number) + more);
}

function bracketText(low: number | null, high: number | null, show: Show): string {
  if (low !== null && high !== null) return low === high ? show(low) : `between ${show(low)} and ${show(high)}`;
  if (low !== null) return `≥ ${show(low)}`;
  return high === null ? NO_NUMBER : `≤ ${show(high)}`;
}

function intervalOf(low: number | null, high: number | null, level: number | null, show: Show): string {
  if (low === null && high === null) return '';
  const percent = level === null ? null : Number((level * 100).toPrecision(6));
  const name = percent === null ? 'range' : `${formatNumber(percent, plainDecimals(percent))} % interval`;
  if (low === null) return `${name} up to ${show(high!)}`;
  if (high === null) return `${name} from ${show(low)}`;
  return `${name} ${show(low)} to ${show(high)}`;
}
