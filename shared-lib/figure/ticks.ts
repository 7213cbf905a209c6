import { formatNumber } from '../quantity/format.ts';

/** Round numbers (1, 2 or 5 times a power of ten) inside `low`–`high`, at most `most`, with the text of each. */
export function ticks(low: number, high: number, most: number): { value: number; text: string }[] {
  const span = high - low;
  if (!(span > 0) || !Number.isFinite(span) || most < 1) return [];
  const power = 10 ** Math.floor(Math.log10(span / most));
  const step = [1, 2, 5, 10].map((factor) => factor * power).find((candidate) => Math.floor(high / candidate) - Math.ceil(low / candidate) < most);
  if (step === undefined || !(step > 0)) return [];
  const first = Math.ceil(low / step);
  const count = Math.floor(high / step) - first + 1;
  return Array.from({ length: Math.max(0, count) }, (_, index) => {
    const value = (first + index) * step;
    return { value, text: tickText(value, step) };
  });
}

/** A scale number with the decimals that `step` asks for and a true minus sign. */
export function tickText(value: number, step: number): string {
  const size = Math.max(Math.abs(value), Math.abs(step));
  if (size !== 0 && (size >= 1e7 || size < 1e-4)) {
    const digits = Math.max(0, Math.min(6, Math.floor(Math.log10(size)) - Math.floor(Math.log10(Math.abs(step) || size) + 1e-9)));
    return powerText(value, digits);
  }
  const decimals = Math.min(8, Math.max(0, -Math.floor(Math.log10(Math.abs(step) || 1) + 1e-9)));
  return formatNumber(value, decimals);
}

const SUPERSCRIPT: Record<string, string> = { '-': '⁻', 0: '⁰', 1: '¹', 2: '²', 3: '³', 4: '⁴', 5: '⁵', 6: '⁶', 7: '⁷', 8: '⁸', 9: '⁹' };

function powerText(value: number, digits: number): string {
  if (value === 0) return '0';
  const [mantissa, exponent] = value.toExponential(digits).split('e') as [string, string];
  const power = [...exponent.replace('+', '')].map((character) => SUPERSCRIPT[character]).join('');
  return `${mantissa.replace('-', '−')}×10${power}`;
}
