import { InputError } from '../calculation/input-error.ts';
import { apparatusField, instrumentField } from '../method/instrument-field.ts';
import type { BenchReadings, Method } from '../method/method.ts';
import { readRows } from '../method/read-rows.ts';
import { runOnRows } from '../method/run-on-rows.ts';
import { numberIn, textIn } from '../method/sheet.ts';
import { rubCalculation } from './rub.calculation.ts';

/** Rubbing of a print, dry or wet, followed by density. */
export const rubMethod: Method = {
  id: 'rub',
  version: '1',
  title: 'Rub resistance, dry or wet',
  shortTitle: 'Rub',
  group: 'mechanical',
  standards: ['ASTM D5264'],
  help: {
    shows: 'How much ink a print loses and gives off when it is rubbed, and how many strokes it stands. It does not show adhesion to the film, nor scratching by a hard edge.',
    how: [
      'Mount the print flat, the receptor (print itself, white paper or cloth) on the weight; state both and the load.',
      'For a wet rub wet the receptor with the stated liquid and the stated number of drops, and keep it wet.',
      'Read the density of the print in one marked place before rubbing: that row has 0 strokes.',
      'Rub; a forward and a back stroke count as two. Stop at the stated counts and read the same place again; read the receptor at its darkest.',
      'Enter the strokes so far, not those since the last reading. Rub three specimens or more, each with a fresh receptor.',
      'Go on until the limit is reached or the agreed count; a specimen that never reaches it counts as a lower bound.',
      'How deeply a white receptor is stained, as a grade of the grey scale, goes on the sheet Staining.',
    ],
    spoils: [
      'Ink that has not dried or cured: state the hours since printing.',
      'Another place read, or a fold, a speck or an edge under the weight.',
      'A receptor used twice, or one that dries out in a wet rub.',
      'Densities with and without the film’s own: state which below.',
    ],
  },
  cautions: [{ hazard: 'solvent', text: 'If a wet rub uses anything but water: little of it, with ventilation and gloves, away from flames; its safety data sheet and local codes hold.' }],
  conditions: [
    {
      kind: 'choice',
      key: 'way',
      label: 'Rubbed',
      choices: [
        { value: 'dry', label: 'Dry', shortcut: 'd' },
        { value: 'wet', label: 'Wet', shortcut: 'w' },
      ],
      default: 'dry',
      required: true,
    },
    { kind: 'text', key: 'liquid', label: 'Wetted with', maxLength: 100, hint: 'e.g. water, 3 drops' },
    { kind: 'text', key: 'receptor', label: 'Rubbed against', maxLength: 100, hint: 'print itself, white paper, cloth' },
    { kind: 'number', key: 'loadG', label: 'Load', unit: 'g', min: 0, minExclusive: true, max: 100_000, usual: { min: 200, max: 2000 } },
    { kind: 'number', key: 'lostLimitPct', label: 'At its end when it has lost', unit: '%', min: 0, minExclusive: true, max: 100, usual: { min: 2, max: 50 }, hint: 'of its density; as agreed' },
    { kind: 'number', key: 'transferredLimit', label: 'or has transferred a density of', min: 0, minExclusive: true, max: 8, usual: { min: 0.02, max: 1 }, hint: 'as agreed' },
    { kind: 'number', key: 'filmDensity', label: 'Density of the unprinted film', min: -0.5, max: 8, usual: { min: 0, max: 0.5 }, hint: 'Empty: densities were read above it.' },
    { kind: 'number', key: 'receptorDensity', label: 'Density of the clean receptor', min: -0.5, max: 8, usual: { min: 0, max: 0.5 }, hint: 'Empty: read above it.' },
    { kind: 'number', key: 'hoursSincePrinting', label: 'Since printing', unit: 'h', min: 0, max: 100_000 },
    instrumentField,
    apparatusField('rubTester', 'Rub tester'),
  ],
  readings: {
    rowName: 'reading',
    fields: [
      { kind: 'text', key: 'specimen', label: 'Specimen', maxLength: 100, carryDown: true },
      { kind: 'number', key: 'strokes', label: 'Strokes so far', min: 0, max: 10_000_000, usual: { min: 0, max: 5000 }, required: true, hint: '0 before rubbing' },
      { kind: 'number', key: 'density', label: 'Density of the print', min: -0.5, max: 8, usual: { min: 0, max: 3 } },
      { kind: 'number', key: 'transferred', label: 'Density of the receptor', min: -0.5, max: 8, usual: { min: 0, max: 2 } },
    ],
    startRows: 6,
    minRows: 1,
    maxRows: 1000,
  },
  calculation: 'rub',
  properties: [
    { key: 'strokesToLimit', title: 'Strokes to the limit', unit: 'strokes', better: 'higher', limited: true, headline: true, readingsFigure: 'lasting' },
    { key: 'lostPct', title: 'Density lost at the last strokes', unit: '%', better: 'lower', limited: true, headline: true, readingsFigure: 'lostPct-readings' },
    { key: 'transferred', title: 'Density transferred at the last strokes', unit: 'D', better: 'lower', limited: true, headline: false, readingsFigure: 'transferred-readings' },
    { key: 'median', title: 'Median strokes to the limit', unit: 'strokes', better: 'higher', limited: true, headline: false },
    { key: 'least', title: 'Strokes of the weakest specimen', unit: 'strokes', better: 'higher', limited: true, asRead: true, headline: false },
    { key: 'lost', title: 'Density lost, in density', unit: 'D', better: 'lower', limited: true, headline: false },
  ],
  evaluate,
};

function evaluate(bench: BenchReadings) {
  const begun = readRows(bench, ['strokes', 'density', 'transferred']);
  if (begun.length === 0) throw new InputError('rows[0].strokes', null, 'No specimen has been read yet: begin with its density at 0 strokes.');
  const readings = begun.map(({ values }) => ({
    specimen: textIn(values, 'specimen'),
    strokes: numberIn(values, 'strokes'),
    density: numberIn(values, 'density'),
    transferred: numberIn(values, 'transferred'),
  }));
  const stated = Object.fromEntries(['filmDensity', 'receptorDensity', 'lostLimitPct', 'transferredLimit'].map((key) => [key, numberIn(bench.conditions, key)]));
  return runOnRows(rubCalculation, { readings, ...stated }, { list: 'readings', rows: begun, first: 'strokes', conditions: Object.keys(stated) });
}
