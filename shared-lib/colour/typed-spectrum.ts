import { InputError } from '../calculation/input-error.ts';
import type { Spectrum } from './spectrum.ts';
import { spectrumFromNumbers, type SpectrumFrame } from './spectrum-from-numbers.ts';

/** Two columns are told from a row by this many lines. */
const fewestLines = 4;

/**
 * A spectrum as it is typed or pasted: one row or column of numbers, two columns or two rows with the wavelengths first.
 * Numbers are parted by tab, semicolon, blank or line end, a comma or point marks decimals; where points mark them, commas may
 * part. In front, before a colon, may stand where they begin and end, the step, and the scale: '400-700/10 %: 5,1 5,3 …'.
 * @param field what a refusal is put down to; `FIELD.wavelengths` and `FIELD.scale` where that must be asked
 * @throws InputError as `spectrumFromNumbers`, and for what is no number.
 */
export function typedSpectrum(typed: string, field: string): Spectrum {
  const { frame, body } = splitHead(typed, field);
  const lines = numbersOf(body, field);
  const scale = frame.scale ?? (body.includes('%') ? 'percent' : undefined);
  const { wavelengthsNm, values } = layOut(lines, field);
  if (wavelengthsNm !== null && frame.fromNm !== undefined && wavelengthsNm[0] !== frame.fromNm && wavelengthsNm.at(-1) !== frame.fromNm) {
    throw new InputError(`${field}.wavelengths`, frame.fromNm, `In front stands ${frame.fromNm} nm as the first wavelength, but the numbers begin at ${wavelengthsNm[0]} nm.`);
  }
  return spectrumFromNumbers(values, { ...frame, wavelengthsNm, ...(scale ? { scale } : {}) }, field);
}

/** What stands before the colon: 'FROM-TO/STEP', '%' or '0-1', in any order. */
function splitHead(typed: string, field: string): { frame: SpectrumFrame; body: string } {
  const [, head, body] = /^([^:]*):([\s\S]*)$/.exec(typed.trim()) ?? [];
  const frame: SpectrumFrame = { wavelengthsNm: null };
  if (head === undefined || body === undefined) return { frame, body: typed.trim() };
  for (const word of head.replace(/nm/gi, '').replace(/\s*([-–/])\s*/g, '$1').split(/[\s,;]+/).filter(Boolean)) {
    const [, from, , to, , step] = /^(\d+(?:\.\d+)?)([-–](\d+(?:\.\d+)?))?(\/(\d+(?:\.\d+)?))?$/.exec(word) ?? [];
    if (word === '%') frame.scale = 'percent';
    else if (/^0[-–]1$/.test(word)) frame.scale = 'fraction';
    else if (from !== undefined && (to !== undefined || step !== undefined)) Object.assign(frame, { fromNm: Number(from), ...(to ? { toNm: Number(to) } : {}), ...(step ? { stepNm: Number(step) } : {}) });
    else throw new InputError(field, word, `“${word}” in front of the colon is not understood: there may stand the wavelengths, such as 400-700 or 400/10, and % or 0-1.`);
  }
  return { frame, body };
}

function numbersOf(body: string, field: string): number[][] {
  const lines = body.split(/\r\n|\r|\n/).map((line) => line.trim()).filter((line) => line !== '');
  if (lines.length === 0) throw new InputError(field, '', 'A spectrum takes its reflectances, in percent or as 0 to 1.');
  const points = /\d\.\d/.test(body);
  const rows = lines.map((line) => words(line, points));
  // A first line without any number names the columns.
  const [first, ...rest] = rows;
  const named = rest.length > 0 && first!.every((word) => readNumber(word) === null);
  return (named ? rest : rows).map((row, index) => row.map((word) => readNumber(word) ?? refuse(word, index, rows.length, field)));
}

/** Commas part where points mark the decimals, and where a blank follows them. */
function words(line: string, points: boolean): string[] {
  return line
    .replace(/,(?=\s)/g, ' ')
    .replace(points ? /[,;\t]/g : /[;\t]/g, ' ')
    .split(/\s+/)
    .map((word) => word.replace(/%$/, ''))
    .filter((word) => word !== '' && word !== 'nm');
}

function readNumber(word: string): number | null {
  const plain = word.replace(/nm$/i, '').replace('−', '-');
  if (!/^[+-]?(?:\d+(?:[.,]\d*)?|[.,]\d+)(?:[eE][+-]?\d+)?$/.test(plain)) return null;
  const value = Number(plain.replace(',', '.'));
  return Number.isFinite(value) ? value : null;
}

function refuse(word: string, line: number, lines: number, field: string): never {
  const where = lines > 1 ? `Line ${line + 1}: ` : '';
  throw new InputError(field, word.slice(0, 40), `${where}“${word.slice(0, 40)}” is no number; a spectrum takes numbers parted by blanks, tabs or semicolons.`);
}

function layOut(lines: number[][], field: string): { wavelengthsNm: number[] | null; values: number[] } {
  if (lines.length === 2 && lines[0]!.length > 2 && areWavelengths(lines[0]!)) {
    const [wavelengthsNm, values] = lines as [number[], number[]];
    if (wavelengthsNm.length !== values.length) throw new InputError(field, values.length, `${values.length} readings for ${wavelengthsNm.length} wavelengths: ${values.length < wavelengthsNm.length ? 'some are missing' : 'there are too many'}.`);
    return { wavelengthsNm, values };
  }
  if (lines.length >= fewestLines && lines.some((line) => line.length === 2)) {
    const odd = lines.findIndex((line) => line.length !== 2);
    if (odd !== -1) throw new InputError(field, lines[odd]!.join(' '), `Line ${odd + 1} has ${lines[odd]!.length} ${lines[odd]!.length === 1 ? 'number' : 'numbers'}; the others have a wavelength and a reading.`);
    return { wavelengthsNm: lines.map((line) => line[0]!), values: lines.map((line) => line[1]!) };
  }
  if (lines.length > 1 && lines.some((line) => line.length > 1)) {
    throw new InputError(field, lines.length, `These ${lines.length} lines are no single spectrum: paste one row or column of readings, or two with the wavelengths first. A file with several spectra is read with “File…”.`);
  }
  return { wavelengthsNm: null, values: lines.flat() };
}

function areWavelengths(numbers: readonly number[]): boolean {
  return numbers.every((value) => value >= 200 && value <= 1100);
}
