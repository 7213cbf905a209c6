import type { BenchReadings, Method } from '../method/method.ts';
import { runOnBench } from '../method/run-on-bench.ts';
import { numberIn } from '../method/sheet.ts';
import { benchColumns } from './bench-columns.ts';
import { colourStrengthCalculation } from './colour-strength.calculation.ts';
import { backingField, instrumentField } from './density-conditions.ts';

/** Strength of an ink against its standard, from reflectance where the standard absorbs most. */
export const colourStrengthMethod: Method = {
  id: 'colour-strength',
  version: '1',
  title: 'Colour strength against a standard',
  shortTitle: 'Colour strength',
  group: 'colour',
  standards: [],
  help: {
    shows: 'How strong an ink is in percent of its standard, by K/S at the wavelength where the standard absorbs most. It is meant for drawdowns of equal coat weight that hide, or over one white substrate.',
    how: [
      'Draw down sample and standard side by side with one bar, one stroke, on one sheet; dry both alike.',
      'Find the wavelength at which the standard reflects least and read both there, in percent: one row per drawdown of the sample.',
      'Read the bare substrate as well; its K/S is then subtracted.',
    ],
    spoils: ['Coat weights that differ: weigh, or draw down side by side.', 'A wavelength off the minimum: strength then mixes with hue.', 'Gloss that differs; fluorescent inks, which K/S cannot describe.'],
  },
  cautions: [{ hazard: 'solvent', text: 'Wet drawdowns give off solvent: extraction, no flame or spark, gloves. The safety data sheet and local codes go first.' }],
  conditions: [
    { kind: 'text', key: 'standardName', label: 'Standard', maxLength: 200, required: true },
    { kind: 'number', key: 'wavelengthNm', label: 'Wavelength', unit: 'nm', min: 360, max: 830, usual: { min: 400, max: 700 }, required: true },
    { kind: 'number', key: 'standard', label: 'Reflectance of the standard', unit: '%', min: 0, minExclusive: true, max: 100, usual: { min: 1, max: 60 }, required: true },
    { kind: 'number', key: 'substrate', label: 'Reflectance of the substrate', unit: '%', min: 0, minExclusive: true, max: 100, usual: { min: 60, max: 95 } },
    backingField,
    instrumentField,
  ],
  readings: {
    rowName: 'drawdown',
    fields: [
      { kind: 'text', key: 'label', label: 'Drawdown', maxLength: 100 },
      { kind: 'number', key: 'sample', label: 'Reflectance', unit: '%', min: 0, minExclusive: true, max: 100, usual: { min: 1, max: 60 }, required: true },
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
  const { columns, cellOf } = benchColumns(bench, ['sample']);
  const input = { sample: columns.sample, standard: numberIn(bench.conditions, 'standard'), substrate: numberIn(bench.conditions, 'substrate'), scale: 'percent' };
  return runOnBench(colourStrengthCalculation, input, cellOf);
}
