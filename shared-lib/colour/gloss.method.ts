import { InputError } from '../calculation/input-error.ts';
import { instrumentField } from '../method/instrument-field.ts';
import type { BenchReadings, Method } from '../method/method.ts';
import { runOnBench } from '../method/run-on-bench.ts';
import { numberIn, textIn } from '../method/sheet.ts';
import { glossCalculation } from './gloss.calculation.ts';

/** Specular gloss of a film, print or varnish, and how much of it stays after a treatment. */
export const glossMethod: Method = {
  id: 'gloss',
  version: '1',
  title: 'Specular gloss',
  shortTitle: 'Gloss',
  group: 'colour',
  standards: ['ISO 2813', 'ASTM D523', 'ASTM D2457'],
  help: {
    shows: 'How much of a beam a surface throws back like a mirror, in gloss units (polished black glass: 100), and what is left of it after rubbing, light or heat.',
    how: [
      'Begin at 60°. Above 70 GU go on at 20°, below 10 GU at 85°; film is also read at 45°.',
      'Lay the film flat on matt black, free of air and folds.',
      'Read at least three places, along and across the web; keep one direction in mind, gloss differs with it.',
      'After a treatment read the same places at the same angle.',
    ],
    spoils: ['A film that is not flat: pull it over a flat block.', 'Clear film over a shiny or white ground: the far side adds its own gloss.', 'Dust, fingerprints, a standard that was not cleaned.', 'Numbers of different angles compared.'],
  },
  cautions: [],
  conditions: [
    {
      kind: 'choice',
      key: 'angleDeg',
      label: 'Angle',
      required: true,
      default: '60',
      choices: [
        { value: '60', label: '60°', shortcut: '6' },
        { value: '20', label: '20°', shortcut: '2' },
        { value: '85', label: '85°', shortcut: '8' },
        { value: '45', label: '45°, film', shortcut: '4' },
      ],
    },
    { kind: 'number', key: 'gloss60', label: 'Gloss at 60°', unit: 'GU', min: 0, max: 2000, hint: 'by which another angle was chosen' },
    { kind: 'text', key: 'treatment', label: 'Treatment', maxLength: 200, hint: 'when gloss is read again after it' },
    instrumentField,
  ],
  readings: {
    rowName: 'place',
    fields: [
      { kind: 'text', key: 'label', label: 'Place', maxLength: 100 },
      { kind: 'number', key: 'gloss', label: 'Gloss', unit: 'GU', min: 0, max: 2000, usual: { min: 1, max: 150 }, required: true },
      { kind: 'number', key: 'glossAfter', label: 'After treatment', unit: 'GU', min: 0, max: 2000, usual: { min: 1, max: 150 } },
    ],
    startRows: 5,
    minRows: 1,
    maxRows: 500,
  },
  calculation: 'gloss',
  properties: [
    { key: 'gloss', title: 'Gloss', unit: 'GU', better: 'within', limited: true, headline: true, readingsFigure: 'gloss-readings' },
    { key: 'retentionPct', title: 'Gloss retained', unit: '%', better: 'higher', limited: true, headline: true },
    { key: 'glossAfter', title: 'Gloss after treatment', unit: 'GU', better: 'within', limited: true, headline: false, readingsFigure: 'gloss-after-readings' },
    { key: 'spread', title: 'Spread over the places', unit: 'GU', better: 'lower', limited: true, headline: false },
  ],
  evaluate,
};

function evaluate(bench: BenchReadings) {
  const column = (key: string) => bench.rows.flatMap(({ values }, index) => (numberIn(values, key) === undefined ? [] : [{ index, value: numberIn(values, key)! }]));
  const [before, after] = [column('gloss'), column('glossAfter')];
  if (before.length === 0) throw new InputError('rows[0].gloss', null, 'No gloss has been read yet.');
  const input = {
    angleDeg: Number(textIn(bench.conditions, 'angleDeg') ?? 60),
    values: before.map(({ value }) => value),
    gloss60: numberIn(bench.conditions, 'gloss60'),
    after: after.length === 0 ? undefined : after.map(({ value }) => value),
  };
  return runOnBench(glossCalculation, input, (field) => {
    const [, key, place] = /^(values|after)(?:\[(\d+)\])?/.exec(field) ?? [];
    if (key === undefined) return `conditions.${field}`;
    return key === 'values' ? `rows[${before[Number(place ?? 0)]!.index}].gloss` : `rows[${after[Number(place ?? 0)]!.index}].glossAfter`;
  });
}
