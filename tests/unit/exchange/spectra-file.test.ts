import { describe, expect, it } from 'vitest';
import { previewSpectra, readSpectra } from '../../../electron/exchange/spectra-file.ts';
import type { SpectraReading } from '../../../shared-lib/notebook/colour-entries.ts';
import { refusal } from '../surface-energy/refusal.ts';

const ten = Array.from({ length: 31 }, (_, index) => 400 + 10 * index);
const one = ten.map((nm) => Number((5 + nm / 20).toFixed(2)));
const other = one.map((value) => Number((value + 1.5).toFixed(2)));
const bytes = (text: string) => new TextEncoder().encode(text);
const preview = (text: string, given: Partial<SpectraReading> = {}) => previewSpectra(bytes(text), given);
const comma = (value: number) => String(value).replace('.', ',');

const inColumns = ['nm;solid;tint', ...ten.map((nm, band) => `${nm};${comma(one[band]!)};${comma(other[band]!)}`)].join('\r\n');
const inRows = [`sample,L*,${ten.map((nm) => `R${nm}`).join(',')}`, `solid,48.1,${one.join(',')}`, `tint,70.2,${other.join(',')}`].join('\n');
const bare = [one.map(comma).join('\t'), other.map(comma).join('\t')].join('\n');

describe('a file of spectra is read', () => {
  it.each([
    ['with wavelengths down, semicolons and decimal commas', inColumns, { layout: 'columns', delimiter: ';', decimal: ',' }],
    ['with wavelengths across, commas and decimal points', inRows, { layout: 'rows', delimiter: ',', decimal: '.' }],
    ['parted by blanks', ten.map((nm, band) => `${nm}  ${one[band]}  ${other[band]}`).join('\n'), { layout: 'columns', delimiter: ' ', decimal: '.' }],
    ['upside down', [inColumns.split('\r\n')[0], ...inColumns.split('\r\n').slice(1).reverse()].join('\n'), { layout: 'columns' }],
  ] as const)('%s', (_what, text, reading) => {
    const found = preview(text);
    expect(found.reading).toMatchObject({ format: 'csv', scale: 'percent', ...reading });
    expect(readSpectra(bytes(text), found.reading).map(({ spectrum }) => spectrum.values)).toEqual([one, other]);
  });

  it('with the names of its columns or rows, and what else stands in them left out', () => {
    expect(preview(inColumns).spectra.map(({ name }) => name)).toEqual(['solid', 'tint']);
    expect(preview(inRows).spectra.map(({ name }) => name)).toEqual(['solid', 'tint']);
    expect(preview(inRows).notes).toEqual(['Left out the columns without a wavelength: L*.']);
  });

  it('without wavelengths only once they are said', () => {
    expect(refusal(() => preview(bare)).field).toBe('reading.fromNm');
    expect(refusal(() => preview(bare, { fromNm: 400 })).field).toBe('reading.stepNm');
    const { reading } = preview(bare, { fromNm: 400, stepNm: 10 });
    expect(readSpectra(bytes(bare), reading)[1]!.spectrum).toEqual({ startNm: 400, stepNm: 10, count: 31, scale: 'percent', values: other });
  });

  it('on the scale of its brightest spectrum, which is asked where it cannot be told', () => {
    const dark = one.map((value) => value / 25);
    const both = ['nm;black;white', ...ten.map((nm, band) => `${nm};${dark[band]!.toFixed(3)};${one[band]}`)].join('\n');
    expect(preview(both).reading.scale).toBe('percent');
    const blacks = ['nm;black', ...ten.map((nm, band) => `${nm};${dark[band]!.toFixed(3)}`)].join('\n');
    expect(refusal(() => preview(blacks)).field).toBe('reading.scale');
    expect(preview(blacks, { scale: 'percent' }).spectra[0]!.percent[0]).toBeCloseTo(dark[0]!, 3);
  });

  it('with decimal commas although a name ends as a number with a point does', () => {
    expect(preview(inColumns.replace('tint', 'v2.5')).reading.decimal).toBe(',');
  });

  it('of a thousand spectra by 1 nm, which are more readings than a call takes arguments', () => {
    const by1 = Array.from({ length: 301 }, (_, index) => 400 + index);
    const text = [by1.join(';'), ...Array.from({ length: 1000 }, () => by1.map(() => '50').join(';'))].join('\n');
    const { reading, spectra } = preview(text);
    expect(reading).toMatchObject({ layout: 'rows', scale: 'percent' });
    expect(spectra).toHaveLength(1000);
  });

  it('above 100 %, with a warning', () => {
    expect(preview(inColumns).spectra[0]!.warning).toBe('');
    expect(preview(inColumns.replace(`;${comma(one[20]!)};`, ';104;')).spectra[0]!.warning).toMatch(/above 100 %/);
  });
});

describe('a file that cannot be used is refused with its line', () => {
  it.each([
    ['a missing reading', inColumns.replace(';' + comma(one[4]!) + ';', ';;'), 'bytes', /Line 6: the reading at 440 nm is missing/],
    ['a word for a reading', inColumns.replace(';' + comma(one[4]!) + ';', ';dark;'), 'bytes', /Line 6: the reading at 440 nm, “dark”/],
    ['unequal wavelengths', inColumns.replace('\n450;', '\n452;'), 'bytes', /equal steps/],
    ['a short range', ['nm;solid', ...ten.slice(3).map((nm, band) => `${nm};${one[band]}`)].join('\n'), 'bytes', /reach from 400 to 700 nm/],
    ['two decimal marks', inColumns.replace(comma(one[5]!), String(one[5])), 'reading.decimal', /say which is the decimal mark/],
    ['no numbers', 'a;b\nc;d', 'bytes', /holds no spectrum/],
    ['a column of measured values by the hundred thousand', '300\n'.repeat(200_000), 'reading.fromNm', /200000 readings and no wavelengths/],
    ['nothing', '', 'bytes', /is empty/],
  ])('%s', (_what, text, field, message) => {
    const error = refusal(() => preview(text));
    expect(error.message).toMatch(message);
    expect(error.field).toBe(field);
  });
});
