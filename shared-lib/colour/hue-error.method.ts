import { InputError } from '../calculation/input-error.ts';
import { instrumentField } from '../method/instrument-field.ts';
import type { BenchReadings, Method } from '../method/method.ts';
import { runOnBench } from '../method/run-on-bench.ts';
import { numberIn, textIn } from '../method/sheet.ts';
import { benchColumns } from './bench-columns.ts';
import { backingField, densityBasisField, densityStatusField } from './density-conditions.ts';
import { hueErrorGreynessCalculation } from './hue-error-greyness.calculation.ts';

const filters = ['red', 'green', 'blue'] as const;
const paperKey = { red: 'paperRed', green: 'paperGreen', blue: 'paperBlue' } as const;

/** How far a process ink is from the ideal one. */
export const hueErrorMethod: Method = {
  id: 'hue-error',
  version: '1',
  title: 'Hue error and greyness of a process ink',
  shortTitle: 'Hue error',
  group: 'colour',
  standards: ['ISO 5-3'],
  help: {
    shows: 'How far a process ink leans towards a neighbour (hue error) and how much it is dulled (greyness), from its three filter densities. It tells a contaminated ink from a clean one of the same strength.',
    how: ['Read one solid through the red, the green and the blue filter without moving the instrument: one row per place.', 'Compare with a solid of the same ink, status and density.'],
    spoils: ['Densities with the film’s share left in.', 'Another status: filters differ in width.', 'Solids of different density: both numbers move with the ink film.'],
  },
  cautions: [],
  conditions: [
    { kind: 'text', key: 'ink', label: 'Ink', maxLength: 100, required: true },
    densityStatusField,
    densityBasisField,
    ...filters.map((filter) => ({ kind: 'number' as const, key: paperKey[filter], label: `Film through ${filter}`, min: 0, max: 4, hint: 'with absolute densities only' })),
    backingField,
    instrumentField,
  ],
  readings: {
    rowName: 'place',
    fields: [
      { kind: 'text', key: 'label', label: 'Place', maxLength: 100 },
      ...filters.map((key) => ({ kind: 'number' as const, key, label: `${key[0]!.toUpperCase()}${key.slice(1)} filter`, min: -0.05, max: 6, usual: { min: 0, max: 2.5 }, required: true })),
    ],
    startRows: 5,
    minRows: 1,
    maxRows: 500,
  },
  calculation: 'hue-error-greyness',
  properties: [
    { key: 'hueErrorPct', title: 'Hue error', unit: '%', better: 'lower', limited: true, headline: true, readingsFigure: 'hue-error-readings' },
    { key: 'greynessPct', title: 'Greyness', unit: '%', better: 'lower', limited: true, headline: true, readingsFigure: 'greyness-readings' },
    { key: 'efficiencyPct', title: 'Efficiency', unit: '%', better: 'higher', limited: true, headline: false },
  ],
  evaluate,
};

function evaluate(bench: BenchReadings) {
  const { columns, cellOf } = benchColumns(bench, filters);
  return runOnBench(hueErrorGreynessCalculation, { ...columns, paper: paperOf(bench) }, (field) => {
    const paper = /^paper\.(red|green|blue)/.exec(field)?.[1] as (typeof filters)[number] | undefined;
    return paper ? `conditions.${paperKey[paper]}` : cellOf(field);
  });
}

/** @throws InputError when absolute densities lack one of the film, or readings minus film have one. */
function paperOf(bench: BenchReadings): Record<(typeof filters)[number], number> | undefined {
  const absolute = textIn(bench.conditions, 'densityBasis') === 'absolute';
  const given = filters.map((filter) => numberIn(bench.conditions, paperKey[filter]));
  const odd = filters.find((_, place) => (given[place] === undefined) === absolute);
  if (odd) {
    throw new InputError(`conditions.${paperKey[odd]}`, given[filters.indexOf(odd)] ?? null, absolute ? 'Absolute densities need those of the unprinted film through all three filters.' : 'Densities read minus film take no density of the film; it would be subtracted twice.');
  }
  return absolute ? { red: given[0]!, green: given[1]!, blue: given[2]! } : undefined;
}
