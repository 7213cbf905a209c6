import { instrumentField } from '../method/instrument-field.ts';
import type { BenchReadings, Method } from '../method/method.ts';
import { runOnBench } from '../method/run-on-bench.ts';
import { textIn } from '../method/sheet.ts';
import { benchColumns } from './bench-columns.ts';
import { backingField } from './density-conditions.ts';
import { whitenessCalculation } from './whiteness.calculation.ts';

const keys = ['X', 'Y', 'Z'] as const;

/** Whiteness and yellowness of white film, white ink or paper. */
export const whitenessMethod: Method = {
  id: 'whiteness',
  version: '1',
  title: 'Whiteness and yellowness',
  shortTitle: 'Whiteness',
  group: 'colour',
  standards: ['ASTM E313', 'CIE 015'],
  help: {
    shows: 'How white a white film or ink looks, which tint it has, and how far it has yellowed. Only whites compare; the formula says when a sample is none.',
    how: ['Read X, Y, Z at several places under the illuminant and observer chosen: one row per place.', 'Lay film over the agreed backing, thin white film in several layers until another changes nothing.'],
    spoils: ['Brighteners measured under a lamp of another UV share.', 'Backing that shines through.', 'Samples handled or aged differently.'],
  },
  cautions: [],
  conditions: [
    {
      kind: 'choice',
      key: 'illuminant',
      label: 'Illuminant',
      required: true,
      default: 'D65',
      choices: [
        { value: 'D65', label: 'D65', shortcut: 'd' },
        { value: 'C', label: 'C', shortcut: 'c' },
      ],
    },
    {
      kind: 'choice',
      key: 'observer',
      label: 'Observer',
      required: true,
      default: '10',
      choices: [
        { value: '10', label: '10°, CIE 1964', shortcut: '0' },
        { value: '2', label: '2°, CIE 1931', shortcut: '2' },
      ],
    },
    backingField,
    instrumentField,
  ],
  readings: {
    rowName: 'place',
    fields: [
      { kind: 'text', key: 'label', label: 'Place', maxLength: 100 },
      ...keys.map((key) => ({ kind: 'number' as const, key, label: key, min: 0, max: 300, usual: { min: 60, max: 130 }, required: true })),
    ],
    startRows: 5,
    minRows: 1,
    maxRows: 500,
  },
  calculation: 'whiteness',
  properties: [
    { key: 'whiteness', title: 'Whiteness (CIE)', unit: '', better: 'higher', limited: true, headline: true, readingsFigure: 'whiteness-readings' },
    { key: 'tint', title: 'Tint', unit: '', better: 'within', limited: true, headline: false },
    { key: 'yellownessE313', title: 'Yellowness (E313)', unit: '', better: 'lower', limited: true, headline: true, readingsFigure: 'yellowness-readings' },
  ],
  evaluate,
};

function evaluate(bench: BenchReadings) {
  const { columns, rows } = benchColumns(bench, keys);
  const input = {
    xyz: rows.map((_, place) => keys.map((key) => columns[key][place]!)),
    illuminant: textIn(bench.conditions, 'illuminant') ?? 'D65',
    observer: Number(textIn(bench.conditions, 'observer') ?? 10),
  };
  return runOnBench(whitenessCalculation, input, (field) => {
    const [, row, place] = /^xyz\[(\d+)\](?:\[(\d)\])?/.exec(field) ?? [];
    if (row === undefined) return `conditions.${field}`;
    // One row alone is refused as the reading itself.
    return place === undefined ? `rows[${rows[0]}].${keys[Number(row)] ?? 'Y'}` : `rows[${rows[Number(row)]}].${keys[Number(place)]}`;
  });
}
