import { InputError } from '../calculation/input-error.ts';
import { instrumentField } from '../method/instrument-field.ts';
import type { BenchReadings, Field, Method } from '../method/method.ts';
import { runOnBench } from '../method/run-on-bench.ts';
import { numberIn, textIn } from '../method/sheet.ts';
import { benchColumns } from './bench-columns.ts';
import { benchSpectra, type BenchSpectra } from './bench-spectra.ts';
import { colourStrengthCalculation } from './colour-strength.calculation.ts';
import { backingField } from './density-conditions.ts';

const strengthField: Field = {
  kind: 'choice',
  key: 'strengthBy',
  label: 'Strength from spectra',
  choices: [
    { value: 'summed', label: 'summed over all bands', shortcut: 's' },
    { value: 'maximum', label: 'where the standard absorbs most', shortcut: 'm' },
    { value: 'weighted', label: 'weighted by the eye (10°, D65)', shortcut: 'w' },
  ],
  default: 'summed',
};

/** Strength of an ink against its standard, from reflectance where the standard absorbs most. */
export const colourStrengthMethod: Method = {
  id: 'colour-strength',
  version: '2',
  title: 'Colour strength against a standard',
  shortTitle: 'Colour strength',
  group: 'colour',
  standards: [],
  help: {
    shows: 'How strong an ink is in percent of its standard, by K/S: at the wavelength where the standard absorbs most, or from spectra over all bands. It is meant for drawdowns of equal coat weight that hide, or over one white substrate.',
    how: [
      'Draw down sample and standard side by side with one bar, one stroke, on one sheet; dry both alike.',
      'Read the spectra of both: one row per drawdown of the sample. Or find the wavelength at which the standard reflects least and read both there, in percent.',
      'Read the bare substrate as well; its K/S is then subtracted.',
    ],
    spoils: ['Coat weights that differ: weigh, or draw down side by side.', 'A wavelength off the minimum: strength then mixes with hue.', 'Gloss that differs; fluorescent inks, which K/S cannot describe.'],
  },
  cautions: [{ hazard: 'solvent', text: 'Wet drawdowns give off solvent: extraction, no flame or spark, gloves. The safety data sheet and local codes go first.' }],
  conditions: [
    { kind: 'text', key: 'standardName', label: 'Standard', maxLength: 200, required: true },
    { kind: 'spectrum', key: 'standardSpectrum', label: 'Spectrum of the standard' },
    { kind: 'spectrum', key: 'substrateSpectrum', label: 'Spectrum of the substrate' },
    strengthField,
    { kind: 'number', key: 'wavelengthNm', label: 'Wavelength', unit: 'nm', min: 360, max: 830, usual: { min: 400, max: 700 }, hint: 'of reflectances that are typed' },
    { kind: 'number', key: 'standard', label: 'Reflectance of the standard', unit: '%', min: 0, minExclusive: true, max: 100, usual: { min: 1, max: 60 } },
    { kind: 'number', key: 'substrate', label: 'Reflectance of the substrate', unit: '%', min: 0, minExclusive: true, max: 100, usual: { min: 60, max: 95 } },
    backingField,
    instrumentField,
  ],
  readings: {
    rowName: 'drawdown',
    fields: [
      { kind: 'text', key: 'label', label: 'Drawdown', maxLength: 100 },
      { kind: 'spectrum', key: 'spectrum', label: 'Spectrum', nameTo: 'label' },
      { kind: 'number', key: 'sample', label: 'Reflectance', unit: '%', min: 0, minExclusive: true, max: 100, usual: { min: 1, max: 60 } },
    ],
    startRows: 4,
    minRows: 1,
    maxRows: 500,
  },
  calculation: 'colour-strength',
  properties: [{ key: 'strengthPct', title: 'Strength', unit: '%', better: 'within', limited: true, headline: true, readingsFigure: 'strength-readings' }],
  evaluate,
};

function evaluate(bench: BenchReadings) {
  const spectra = benchSpectra(bench, ['standardSpectrum', 'substrateSpectrum'], ['sample']);
  return spectra ? fromSpectra(bench, spectra) : fromTyped(bench);
}

function fromSpectra({ conditions }: BenchReadings, { wavelengthsNm, curves, rows, ofConditions }: BenchSpectra) {
  const { standardSpectrum: standard, substrateSpectrum: substrate } = ofConditions;
  if (!standard) throw new InputError('conditions.standardSpectrum', null, 'The samples are spectra: the standard is needed as a spectrum, too.');
  const input = { standard, sample: curves, substrate, scale: 'fraction', method: textIn(conditions, 'strengthBy') ?? 'summed', wavelengthsNm };
  return runOnBench(colourStrengthCalculation, input, (field) => {
    const [, what, place] = /^(sample|standard|substrate)(?:\[(\d+)\])?/.exec(field) ?? [];
    if (what === 'sample') return `rows[${rows[Number(place ?? 0)]}].spectrum`;
    return what === undefined ? '' : `conditions.${what}Spectrum`;
  });
}

function fromTyped(bench: BenchReadings) {
  const missing = (['wavelengthNm', 'standard'] as const).find((key) => numberIn(bench.conditions, key) === undefined);
  if (missing !== undefined && bench.rows.some(({ values }) => numberIn(values, 'sample') !== undefined)) {
    throw new InputError(`conditions.${missing}`, null, missing === 'standard' ? 'Reflectances that are typed need that of the standard at the same wavelength.' : 'Reflectances that are typed need the wavelength at which they were read.');
  }
  const { columns, cellOf } = benchColumns(bench, ['sample']);
  const input = { sample: columns.sample, standard: numberIn(bench.conditions, 'standard'), substrate: numberIn(bench.conditions, 'substrate'), scale: 'percent' };
  return runOnBench(colourStrengthCalculation, input, cellOf);
}
