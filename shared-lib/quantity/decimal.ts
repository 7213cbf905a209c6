/** A number as typed at the bench, or the sentence that says why it was not taken. */
export type ReadDecimal = { value: number } | { problem: string };

const SPACES = /[\s\u00a0\u2007\u2009\u202f]/gu;
const SPACE = '[\\s\\u00a0\\u2007\\u2009\\u202f]';
/** Digits, with point, comma or space as marks, and a power of ten. */
const NUMBER_START = new RegExp(`^[+\\-−]?(?:\\d+(?:(?:[.,]|${SPACE}(?=\\d))\\d*)*|[.,]\\d+)(?:[eE][+\\-−]?\\d+)?`, 'u');

/** Each way to write a number: the marks to drop and the decimal mark to turn into a point. */
const FORMS: { pattern: RegExp; drop: RegExp; decimal: '.' | ',' }[] = [
  { pattern: /^(?:\d+(?:[.,]\d+)?|[.,]\d+)$/u, drop: /(?!)/gu, decimal: ',' },
  { pattern: new RegExp(`^\\d{1,3}(?:${SPACE}\\d{3})+(?:[.,]\\d+)?$`, 'u'), drop: SPACES, decimal: ',' },
  { pattern: /^\d{1,3}(?:\.\d{3})+,\d+$/u, drop: /\./gu, decimal: ',' },
  { pattern: /^\d{1,3}(?:,\d{3})+\.\d+$/u, drop: /,/gu, decimal: '.' },
  { pattern: /^\d{1,3}(?:\.\d{3}){2,}$/u, drop: /\./gu, decimal: '.' },
  { pattern: /^\d{1,3}(?:,\d{3}){2,}$/u, drop: /,/gu, decimal: '.' },
];

/**
 * Reads a number as people type it: decimal point or comma, thousands in groups of three ('1 234.5', '1.234,5',
 * '1,234.5'), '−' or '-', a power of ten ('1e-3'). One comma followed by exactly three digits ('1,234') could mean either
 * and is asked back, unless the whole part is zero or longer than three digits.
 */
export function readDecimal(typed: string): ReadDecimal {
  const text = typed.trim();
  if (text === '') return { problem: 'Nothing was typed; type a number such as 38.5.' };
  const start = NUMBER_START.exec(text)?.[0];
  if (start === undefined) return { problem: `Read ${quote(text)}, which is not a number; type digits such as 38.5 or 38,5.` };
  const rest = text.slice(start.length).trim();
  if (rest !== '') {
    return /^[\p{L}%°µ]/u.test(rest)
      ? { problem: `Read ${quote(text)}; type the number alone, ${start.trim()}, without the unit: it stands beside the field.` }
      : { problem: `Read ${quote(text)}, which goes on after the number ${start.trim()}; type one number such as 38.5 or 38,5.` };
  }
  return readNumber(start, text);
}

function readNumber(start: string, text: string): ReadDecimal {
  const [, sign, mantissa, power] = /^([+\-−]?)(.*?)(?:[eE]([+\-−]?\d+))?$/su.exec(start) as unknown as [string, string, string, string | undefined];
  const negative = /[\-−]/u.test(sign);
  const ambiguous = /^([1-9]\d{0,2}),(\d{3})$/u.exec(mantissa);
  if (ambiguous) {
    const either = ['.', ''].map((mark) => `${negative ? '−' : ''}${ambiguous[1]}${mark}${ambiguous[2]}${power ? `e${power}` : ''}`).join(' or ');
    return { problem: `Read ${quote(text)}, which could mean ${either}; type ${either}.` };
  }
  const form = FORMS.find(({ pattern }) => pattern.test(mantissa));
  if (!form) {
    return { problem: `Read ${quote(text)}, in which the points, commas or spaces do not make one number; type it such as 1234.5 or 1 234,5.` };
  }
  const digits = mantissa.replace(form.drop, '').replace(form.decimal, '.');
  const value = Number(`${digits}e${(power ?? '0').replace('−', '-')}`);
  if (!Number.isFinite(value)) return { problem: `Read ${quote(text)}, which is too large to keep; check the power of ten.` };
  if (value === 0 && /[1-9]/u.test(digits)) return { problem: `Read ${quote(text)}, which is too small to keep; check the power of ten.` };
  return { value: negative && value !== 0 ? -value : value };
}

function quote(text: string): string {
  return `'${text.length > 40 ? `${text.slice(0, 40)}…` : text}'`;
}
