import { instrumentField } from '../method/instrument-field.ts';
import type { BenchReadings, Method } from '../method/method.ts';
import { runOnBench } from '../method/run-on-bench.ts';
import { numberIn } from '../method/sheet.ts';
import { benchColumns } from './bench-columns.ts';
import { opacityCalculation } from './opacity.calculation.ts';

/** How well a white print or film hides what is behind it. */
export const opacityMethod: Method = {
  id: 'opacity',
  version: '1',
  title: 'Opacity by contrast ratio over black and white',
  shortTitle: 'Opacity',
  group: 'colour',
  standards: ['ISO 13655', 'ISO 2471', 'TAPPI T 425', 'ASTM D2805'],
  help: {
    shows: 'How well a white ink or film hides the product behind it: what it reflects over black, as a share of what it reflects over white.',
    how: [
      'Read Y of the same place over the black and over the white backing: one row per place.',
      'Lay the film flat on the backing without air between.',
      'Read the bare white backing once as well: opacities for other backings then follow.',
    ],
    spoils: ['Air, folds or fingerprints between film and backing.', 'A black that reflects more than 0.5 %, a white that has yellowed.', 'Comparing numbers that were taken with different white backings or geometries.'],
  },
  cautions: [],
  conditions: [
    { kind: 'number', key: 'whiteBackingY', label: 'Y of the white backing', unit: '%', min: 0, minExclusive: true, max: 100, usual: { min: 75, max: 95 } },
    { kind: 'text', key: 'light', label: 'Illuminant and observer', maxLength: 60, hint: 'e.g. D50, 2°; TAPPI T 425 uses A, 2°' },
    instrumentField,
  ],
  readings: {
    rowName: 'place',
    fields: [
      { kind: 'text', key: 'label', label: 'Place', maxLength: 100 },
      { kind: 'number', key: 'overBlackY', label: 'Y over black', unit: '%', min: 0, max: 120, usual: { min: 5, max: 95 }, required: true },
      { kind: 'number', key: 'overWhiteY', label: 'Y over white', unit: '%', min: 0, minExclusive: true, max: 120, usual: { min: 40, max: 98 }, required: true },
    ],
    startRows: 5,
    minRows: 1,
    maxRows: 500,
  },
  calculation: 'opacity',
  properties: [
    { key: 'contrastRatioPct', title: 'Contrast ratio', unit: '%', better: 'higher', limited: true, headline: true, readingsFigure: 'opacity-readings' },
    { key: 't425Pct', title: 'Opacity, 89 % backing', unit: '%', better: 'higher', limited: true, headline: false },
    { key: 'd2805Pct', title: 'Opacity, 80 % backing', unit: '%', better: 'higher', limited: true, headline: false },
    { key: 'iso2471Pct', title: 'Opacity over its own pile', unit: '%', better: 'higher', limited: true, headline: false },
  ],
  evaluate,
};

function evaluate(bench: BenchReadings) {
  const { columns, cellOf } = benchColumns(bench, ['overBlackY', 'overWhiteY']);
  return runOnBench(opacityCalculation, { ...columns, whiteBackingY: numberIn(bench.conditions, 'whiteBackingY') }, cellOf);
}
