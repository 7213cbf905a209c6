import { instrumentField } from '../method/instrument-field.ts';
import type { BenchReadings, Method } from '../method/method.ts';
import { runOnBench } from '../method/run-on-bench.ts';
import { numberIn } from '../method/sheet.ts';
import { benchColumns } from './bench-columns.ts';
import { backingField, densityBasisField, densityStatusField, paperDensityField, paperDensityOf } from './density-conditions.ts';
import { printContrastCalculation } from './print-contrast.calculation.ts';

/** How well shadows keep their detail: solid against a dark tint. */
export const printContrastMethod: Method = {
  id: 'print-contrast',
  version: '1',
  title: 'Print contrast of solid and dark tint',
  shortTitle: 'Print contrast',
  group: 'colour',
  standards: ['ISO 12647-1', 'ISO 5-3'],
  help: {
    shows: 'Whether detail in the shadows stays open: the density left between the solid and a dark tint, as a share of the solid.',
    how: ['Read a solid and the dark tint beside it, of one ink and over one backing: one row per place.', 'Take the 75 % patch unless the customer asks for another; the patch is kept with the result.'],
    spoils: ['Solid and tint from different places.', 'Results of different patches compared.', 'Ink film pushed up for contrast: look at gain and trap as well.'],
  },
  cautions: [],
  conditions: [
    { kind: 'number', key: 'patchPct', label: 'Tint', unit: '% nominal', min: 1, max: 99, default: 75, usual: { min: 70, max: 80 }, required: true },
    densityStatusField,
    densityBasisField,
    paperDensityField,
    backingField,
    instrumentField,
  ],
  readings: {
    rowName: 'place',
    fields: [
      { kind: 'text', key: 'label', label: 'Place', maxLength: 100 },
      { kind: 'number', key: 'solid', label: 'Solid', min: 0, minExclusive: true, max: 6, usual: { min: 0.5, max: 2.5 }, required: true },
      { kind: 'number', key: 'tint', label: 'Tint', min: -0.05, max: 6, usual: { min: 0.2, max: 2 }, required: true },
    ],
    startRows: 5,
    minRows: 1,
    maxRows: 500,
  },
  calculation: 'print-contrast',
  properties: [{ key: 'contrastPct', title: 'Print contrast', unit: '%', better: 'higher', limited: true, headline: true, readingsFigure: 'contrast-readings' }],
  evaluate,
};

function evaluate(bench: BenchReadings) {
  const { columns, cellOf } = benchColumns(bench, ['solid', 'tint']);
  const input = { ...columns, patchPct: numberIn(bench.conditions, 'patchPct') ?? 75, paper: paperDensityOf(bench) };
  return runOnBench(printContrastCalculation, input, (field) => (field === 'paper' ? 'conditions.paperDensity' : cellOf(field)));
}
