import { describe, expect, it } from 'vitest';
import { previewSpectra, readSpectra } from '../../../electron/exchange/spectra-file.ts';
import { refusal } from '../../unit/surface-energy/refusal.ts';

const bytes = (text: string) => new TextEncoder().encode(text);
const read = (text: string) => readSpectra(bytes(text), previewSpectra(bytes(text), {}).reading);
const bands = Array.from({ length: 16 }, (_, index) => 400 + 20 * index);
const cyan = [42, 55.5, 62.1, 60, 51, 38.2, 25, 14.4, 8, 5.1, 4.2, 4, 4.1, 4.6, 6, 9.3];
const black = cyan.map((value) => Number((value / 20).toFixed(3)));

/**
 * A file in the grammar of CGATS.17 (ISO 28178), from memory: a file identifier, keywords with quoted values, comments behind #,
 * the names of the fields between BEGIN_DATA_FORMAT and END_DATA_FORMAT, records between BEGIN_DATA and END_DATA parted by any
 * white space. Written by hand for this test.
 */
const cgats = (fields: string, records: string[]) => `CGATS.17
ORIGINATOR "Quillmere Flexibles"
FILE_DESCRIPTOR "solids of job 4431"   # over white
CREATED "2026-03-10"
INSTRUMENTATION "spectrophotometer 2"
MEASUREMENT_SOURCE "MeasurementCondition=M1"

NUMBER_OF_FIELDS ${fields.split(/\s+/).length}
BEGIN_DATA_FORMAT
${fields}
END_DATA_FORMAT

NUMBER_OF_SETS ${records.length}
BEGIN_DATA
${records.join('\n')}
END_DATA
`;

describe('CGATS.17 (ISO 28178)', () => {
  it('with a field for each wavelength', () => {
    const text = cgats(`SAMPLE_ID SAMPLE_NAME LAB_L LAB_A LAB_B ${bands.map((nm) => `SPECTRAL_NM${nm}`).join(' ')}`, [`1 "cyan, solid" 55.1 -36.9 -49.8 ${cyan.join(' ')}`, `2 "black" 16.0 0.1 0.2\n${black.join('\t')}`]);
    expect(read(text)).toEqual([
      { name: 'cyan, solid', spectrum: { startNm: 400, stepNm: 20, count: 16, scale: 'percent', values: cyan } },
      { name: 'black', spectrum: { startNm: 400, stepNm: 20, count: 16, scale: 'percent', values: black } },
    ]);
  });

  it('with pairs of wavelength and fraction', () => {
    const text = cgats(`SAMPLE_ID ${bands.map(() => 'SPECTRAL_NM SPECTRAL_DEC').join(' ')}`, [`A7 ${bands.map((nm, band) => `${nm} ${(cyan[band]! / 100).toFixed(4)}`).join(' ')}`]);
    expect(read(text)).toEqual([{ name: 'A7', spectrum: { startNm: 400, stepNm: 20, count: 16, scale: 'fraction', values: cyan.map((value) => Number((value / 100).toFixed(4))) } }]);
  });

  it.each([
    ['records that do not fit their fields', cgats(`SAMPLE_ID ${bands.map((nm) => `SPECTRAL_NM${nm}`).join(' ')}`, [`1 ${cyan.slice(1).join(' ')}`]), /do not divide into records of 17 fields/],
    ['another number of sets than it says', cgats(`SAMPLE_ID ${bands.map((nm) => `SPECTRAL_NM${nm}`).join(' ')}`, [`1 ${cyan.join(' ')}`]).replace('NUMBER_OF_SETS 1', 'NUMBER_OF_SETS 3'), /says NUMBER_OF_SETS 3 and holds 1/],
    ['data that break off', cgats('SAMPLE_ID SPECTRAL_NM400', ['1 5']).replace('\nEND_DATA\n', '\n'), /not closed by END_DATA/],
    ['readings that no wavelength stands before', cgats('SPECTRAL_PCT SAMPLE_ID', ['5 1']), /SPECTRAL_PCT must follow SPECTRAL_NM/],
    ['colours without spectra', cgats('SAMPLE_ID LAB_L LAB_A LAB_B', ['1 50 1 2']), /has no spectra/],
  ])('is refused: %s', (_what, text, message) => {
    expect(refusal(() => read(text)).message).toMatch(message);
  });
});

/** A file in the structure of ISO 17972-1, from memory: objects with their colour values, and the wavelength range in the specification that a spectrum names. */
const cxf = (range: string, spectrum: string) => `<?xml version="1.0" encoding="UTF-8"?>
<cc:CxF xmlns:cc="urn:example:core">
  <cc:Resources>
    <cc:ObjectCollection>
      <cc:Object ObjectType="Standard" Name="Pouch red &amp; white" Id="o1">
        <cc:ColorValues>${spectrum}<cc:ColorCIELab ColorSpecification="s1"><cc:L>50</cc:L></cc:ColorCIELab></cc:ColorValues>
      </cc:Object>
    </cc:ObjectCollection>
    <cc:ColorSpecificationCollection>
      <cc:ColorSpecification Id="s1"><cc:MeasurementSpec>${range}</cc:MeasurementSpec></cc:ColorSpecification>
    </cc:ColorSpecificationCollection>
  </cc:Resources>
</cc:CxF>`;
const range = '<cc:WavelengthRange StartWL="400" Increment="20"/>';
const fractions = cyan.map((value) => Number((value / 100).toFixed(4)));
const spectrum = `<cc:ReflectanceSpectrum ColorSpecification="s1" StartWL="400">${fractions.join(' ')}</cc:ReflectanceSpectrum>`;

describe('ISO 17972', () => {
  it('gives the spectra of its objects on the range of their specification', () => {
    const [found] = read(cxf(range, spectrum));
    expect(found!.spectrum).toEqual({ startNm: 400, stepNm: 20, count: 16, scale: 'fraction', values: fractions });
    expect(found!.name).toBe('Pouch red & white');
  });

  it('asks for the step where its specification has none', () => {
    expect(refusal(() => read(cxf('', spectrum))).field).toBe('reading.fromNm');
  });

  it.each([
    ['a document type, with entities that grow', `<!DOCTYPE x [<!ENTITY a "aaaa"><!ENTITY b "&a;&a;&a;">]>${cxf(range, spectrum)}`, /document type/],
    ['XML that is not closed', cxf(range, spectrum).slice(0, -20), /no well-formed XML/],
    ['no spectra', cxf(range, ''), /no reflectance spectra/],
    ['a spectrum without values', cxf(range, spectrum.replace(/>[^<]+</, '><')), /its spectrum has no values/],
    ['a word among the bands', cxf(range, spectrum.replace(' 0.555', ' dark')), /band 2 is no number/],
  ])('refuses %s', (_what, text, message) => {
    expect(refusal(() => read(text)).message).toMatch(message);
  });
});
