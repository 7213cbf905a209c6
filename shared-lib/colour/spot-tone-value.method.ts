import { InputError } from '../calculation/input-error.ts';
import { instrumentField } from '../method/instrument-field.ts';
import type { BenchReadings, Method } from '../method/method.ts';
import { runOnBench } from '../method/run-on-bench.ts';
import { numberIn } from '../method/sheet.ts';
import { benchColumns } from './bench-columns.ts';
import { backingField } from './density-conditions.ts';
import { nominalField, reportField, toneValueProperties } from './tone-value-fields.ts';
import { toneValueCalculation } from './tone-value.calculation.ts';

const keys = ['nominalPct', 'X', 'Y', 'Z'] as const;

/** Tone values of a spot colour from tristimulus values, where density has no filter for the ink. */
export const spotToneValueMethod: Method = {
  id: 'spot-tone-value',
  version: '1',
  title: 'Tone value of a spot colour from X, Y, Z',
  shortTitle: 'Spot tone value',
  group: 'colour',
  standards: ['ISO 20654', 'ISO 13655'],
  help: {
    shows: 'How far each tint of a spot colour has gone from the film towards the solid, as the eye sees it; for inks that no density filter fits.',
    how: [
      'Read X, Y and Z under D50, 2° of the unprinted film (0 %), the solid (100 %) and the tints, over one backing.',
      'One row per reading; rows of the same nominal value are replicates.',
    ],
    spoils: ['Solid and tints from different places.', 'Another illuminant or observer than D50, 2°.', 'Comparing these values with Murray–Davies values of a process ink.'],
  },
  cautions: [],
  conditions: [reportField, backingField, instrumentField],
  readings: {
    rowName: 'patch',
    fields: [
      nominalField,
      ...(['X', 'Y', 'Z'] as const).map((key) => ({ kind: 'number' as const, key, label: key, min: 0, max: 300, usual: { min: 0.5, max: 110 }, required: true })),
    ],
    startRows: 8,
    minRows: 3,
    maxRows: 500,
  },
  calculation: 'tone-value',
  properties: toneValueProperties,
  evaluate,
};

function evaluate(bench: BenchReadings) {
  const { columns, rows } = benchColumns(bench, keys);
  const read = rows.map((index, place) => ({ index, nominalPct: columns.nominalPct[place]!, xyz: [columns.X[place]!, columns.Y[place]!, columns.Z[place]!] }));
  const mean = (nominal: number, what: string) => {
    const same = read.filter(({ nominalPct }) => nominalPct === nominal);
    if (same.length === 0) throw new InputError(`rows[${rows.length}].nominalPct`, null, `The ${what} is missing: enter it at ${nominal} %.`);
    return [0, 1, 2].map((place) => same.reduce((sum, { xyz }) => sum + xyz[place]!, 0) / same.length);
  };
  const tints = read.filter(({ nominalPct }) => nominalPct > 0 && nominalPct < 100);
  if (tints.length === 0) throw new InputError(`rows[${rows.length}].nominalPct`, null, 'No tint has been read yet.');
  const input = {
    paper: mean(0, 'unprinted film'),
    solid: mean(100, 'solid'),
    patches: tints.map(({ nominalPct, xyz }) => ({ nominalPct, tint: xyz })),
    reportAtPct: numberIn(bench.conditions, 'reportAtPct') ?? 50,
  };
  return runOnBench(toneValueCalculation, input, (field) => {
    const patch = /^patches\[(\d+)\]/.exec(field);
    if (patch) return `rows[${tints[Number(patch[1])]!.index}].X`;
    return field.startsWith('solid') || field.startsWith('paper') ? '' : `conditions.${field}`;
  });
}
