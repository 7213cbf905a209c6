import { describe, expect, it } from 'vitest';
import { spectrumInWords, spectrumOf, spectrumText } from '../../../shared-lib/colour/spectrum-text.ts';
import { typedSpectrum } from '../../../shared-lib/colour/typed-spectrum.ts';
import { refusal } from '../surface-energy/refusal.ts';

const at = (from: number, to: number, step: number) => Array.from({ length: (to - from) / step + 1 }, (_, index) => from + index * step);
const ten = at(400, 700, 10);
const percent = ten.map((nm) => Number((5 + 60 / (1 + Math.exp(-(nm - 580) / 15))).toFixed(2)));
const read = (typed: string) => typedSpectrum(typed, 'typed');
const columns = (separator: string, decimal: string) => ten.map((nm, index) => `${nm}${separator}${String(percent[index]).replace('.', decimal)}`).join('\n');
const wanted = { startNm: 400, stepNm: 10, count: 31, scale: 'percent', values: percent };

describe('a spectrum is read as it is typed or pasted', () => {
  it.each([
    ['a row with a head', `400-700: ${percent.join(' ')}`],
    ['a row with start and step', `400/10: ${percent.join(' ')}`],
    ['a row with all that can be said', `400 – 700 nm / 10, %: ${percent.join(' ')}`],
    ['decimal commas and semicolons', `400-700: ${percent.map((value) => String(value).replace('.', ',')).join(';')}`],
    ['decimal commas and blanks', `400-700: ${percent.map((value) => String(value).replace('.', ',')).join(' ')}`],
    ['commas between points', `400-700: ${percent.join(',')}`],
    ['a column', `400-700:\n${percent.join('\r\n')}`],
    ['two columns by tab', columns('\t', '.')],
    ['two columns by tab with decimal commas', columns('\t', ',')],
    ['two columns by semicolon with decimal commas', columns(';', ',')],
    ['two columns by blank', columns(' ', '.')],
    ['two columns with names above', `nm\tR %\n${columns('\t', '.')}`],
    ['two columns downwards', columns('\t', '.').split('\n').reverse().join('\n')],
    ['two rows', `${ten.join('\t')}\n${percent.join('\t')}`],
    ['percent signs', `400-700: ${percent.map((value) => `${value}%`).join(' ')}`],
  ])('%s', (_what, typed) => {
    expect(read(typed)).toEqual(wanted);
  });

  it('as fractions', () => {
    const fractions = percent.map((value) => Number((value / 100).toFixed(4)));
    expect(read(`400-700: ${fractions.join(' ')}`)).toEqual({ ...wanted, scale: 'fraction', values: fractions });
  });

  it('on the scale that stands in front where the numbers do not tell', () => {
    const black = ten.map(() => 1.2).join(' ');
    expect(read(`400-700 %: ${black}`).scale).toBe('percent');
    expect(read(`400-700 0-1: ${black}`).scale).toBe('fraction');
  });

  it('and kept as a text that gives the same spectrum', () => {
    const spectrum = read(`400-700: ${percent.join(' ')}`);
    expect(spectrumOf(spectrumText(spectrum))).toEqual(spectrum);
    expect(read(spectrumText(spectrum))).toEqual(spectrum);
    expect(spectrumInWords(spectrum)).toBe('400–700 nm by 10, 5 to 65 %');
  });
});

describe('what is no spectrum is refused in a sentence', () => {
  it.each([
    ['no wavelengths', percent.join(' '), 'typed.wavelengths', /31 numbers without wavelengths.*“400-700: …”/],
    ['a missing band', `400-700: ${percent.slice(1).join(' ')}`, 'typed.wavelengths', /30 readings do not divide 400–700 nm.*by 10 nm there are 31/],
    ['a missing band with the step', `400-700/10: ${percent.slice(1).join(' ')}`, 'typed', /30 readings for the 31 wavelengths 400–700 nm by 10: one is missing/],
    ['two bands too many', `400-700/10: ${[...percent, 65, 65].join(' ')}`, 'typed', /there are 2 too many/],
    ['unequal steps', columns('\t', '.').replace('500\t', '502\t'), 'typed.wavelengths', /equal steps/],
    ['a short range', `420-700: ${percent.slice(2).join(' ')}`, 'typed.wavelengths', /reach from 400 to 700 nm/],
    ['an unknown scale', `400-700: ${ten.map(() => 1.5).join(' ')}`, 'typed.scale', /1\.5 % of a black, or 150 %/],
    ['a word', `400-700: ${percent.join(' ').replace('5.01', 'five')}`, 'typed', /“five” is no number/],
    ['a head of words', `red: ${percent.join(' ')}`, 'typed', /“red” in front of the colon/],
    ['reflectance beyond all fluorescence', `400-700: ${percent.map((value, index) => (index === 3 ? 250 : value)).join(' ')}`, 'typed', /at 430 nm it is 250 %/],
    ['reflectance below zero', `400-700 0-1: ${percent.map((value, index) => (index === 3 ? -0.2 : value / 100)).join(' ')}`, 'typed', /-20 %/],
    ['a line that lacks its reading', columns('\t', '.').replace(/\t5\.01$/m, ''), 'typed', /Line \d+ has 1 number/],
    ['several spectra', `${ten.join('\t')}\n${percent.join('\t')}\n${percent.join('\t')}`, 'typed', /no single spectrum/],
    ['nothing behind the colon', '400-700:', 'typed', /takes its reflectances/],
    // One reading has no step: it would be kept and could never be read again.
    ['a single reading', '400/10: 5', 'typed.wavelengths', /must be 2 to 1801, not 1/],
    ['a step of nothing', '400-700/0: 5 6', 'typed.wavelengths', /more than 0 nm/],
    ['a step that makes millions', '400-700/0.0000001: 5 6', 'typed.wavelengths', /3000000001 wavelengths; a spectrum has at most 1801/],
    ['ends the wrong way round', `700-400: ${percent.join(' ')}`, 'typed.wavelengths', /must rise: write “400-700: …”/],
    ['wavelengths of no print', `100-700/10: ${[...ten, ...ten].slice(0, 61).map(() => 5).join(' ')}`, 'typed.wavelengths', /between 200 and 1100 nm, not at 100 nm/],
  ])('%s', (_what, typed, field, message) => {
    const error = refusal(() => read(typed));
    expect(error.message).toMatch(message);
    expect(error.field).toBe(field);
  });
});
