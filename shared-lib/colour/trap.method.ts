import { instrumentField } from '../method/instrument-field.ts';
import type { BenchReadings, Method } from '../method/method.ts';
import { runOnBench } from '../method/run-on-bench.ts';
import { benchColumns } from './bench-columns.ts';
import { backingField, densityBasisField, densityStatusField, paperDensityField, paperDensityOf } from './density-conditions.ts';
import { trapCalculation } from './trap.calculation.ts';

/** How well a second ink lies on the first. */
export const trapMethod: Method = {
  id: 'trap',
  version: '1',
  title: 'Ink trap of an overprint',
  shortTitle: 'Trap',
  group: 'colour',
  standards: ['ISO 5-3'],
  help: {
    shows: 'How much of the second ink lies on the first, compared with what lies on bare film. Three formulas; each compares only with itself.',
    how: [
      'Know which ink went down first.',
      'Choose the filter of the second ink (magenta: green; cyan: red; yellow: blue) and keep it for all three readings.',
      'Read first ink alone, second ink alone and the overprint, close together: one row per place.',
    ],
    spoils: ['The wrong filter or the wrong order: results above 100 % or below 0.', 'Solids alone that carry another ink film than under the overprint.', 'Gloss that differs between single ink and overprint.'],
  },
  cautions: [],
  conditions: [
    { kind: 'text', key: 'firstInk', label: 'First ink down', maxLength: 100, required: true },
    { kind: 'text', key: 'secondInk', label: 'Second ink down', maxLength: 100, required: true, hint: 'its filter is used for all readings' },
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
      { kind: 'number', key: 'first', label: 'First ink', min: 0, max: 6, usual: { min: 0, max: 2 }, required: true },
      { kind: 'number', key: 'second', label: 'Second ink', min: 0, minExclusive: true, max: 6, usual: { min: 0.5, max: 2.5 }, required: true },
      { kind: 'number', key: 'overprint', label: 'Overprint', min: 0, minExclusive: true, max: 6, usual: { min: 0.5, max: 3 }, required: true },
    ],
    startRows: 5,
    minRows: 1,
    maxRows: 500,
  },
  calculation: 'trap',
  properties: [
    { key: 'apparentPct', title: 'Apparent trap (Preucil)', unit: '%', better: 'higher', limited: true, headline: true, readingsFigure: 'trap-readings' },
    { key: 'brunnerPct', title: 'Trap after Brunner', unit: '%', better: 'higher', limited: true, headline: false },
    { key: 'ritzPct', title: 'Trap after Ritz', unit: '%', better: 'higher', limited: true, headline: false },
  ],
  evaluate,
};

function evaluate(bench: BenchReadings) {
  const { columns, cellOf } = benchColumns(bench, ['first', 'second', 'overprint']);
  return runOnBench(trapCalculation, { ...columns, paper: paperDensityOf(bench) }, (field) => (field === 'paper' ? 'conditions.paperDensity' : cellOf(field)));
}
