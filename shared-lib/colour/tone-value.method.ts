import { InputError } from '../calculation/input-error.ts';
import { instrumentField } from '../method/instrument-field.ts';
import type { BenchReadings, Method } from '../method/method.ts';
import { runOnBench } from '../method/run-on-bench.ts';
import { numberIn, textIn } from '../method/sheet.ts';
import { benchColumns } from './bench-columns.ts';
import { backingField, densityBasisField, densityStatusField } from './density-conditions.ts';
import { nominalField, reportField, toneValueProperties } from './tone-value-fields.ts';
import { toneValueCalculation } from './tone-value.calculation.ts';

const help = {
  shows: 'How large the dots print against what the plate was made for, over the whole scale: the tone curve and its gain.',
  how: [
    'Read the unprinted film (0 %), the solid (100 %) and the tints of one ink in one strip, over one backing.',
    'One row per reading; read the reported patch several times: rows of the same nominal value are replicates.',
    'Use the data’s nominal value, before any curve was applied to the plate.',
  ],
  spoils: [
    'Solid and tints from different places: ink feed differs.',
    'Densities with the film’s share left in.',
    'Yule–Nielsen values compared with Murray–Davies values: state the formula.',
    'Plugged or skipping dots: look at them before trusting the number.',
  ],
};

/** Tone values and gain of a process ink from densities. */
export const toneValueMethod: Method = {
  id: 'tone-value',
  version: '1',
  title: 'Tone value and gain from densities',
  shortTitle: 'Tone value',
  group: 'colour',
  standards: ['ISO 12647-1', 'ISO 5-3'],
  help,
  cautions: [],
  conditions: [
    densityStatusField,
    densityBasisField,
    reportField,
    { kind: 'number', key: 'yuleNielsen', label: 'Yule–Nielsen factor', min: 1, max: 10, hint: 'empty: Murray–Davies' },
    backingField,
    instrumentField,
  ],
  readings: {
    rowName: 'patch',
    fields: [nominalField, { kind: 'number', key: 'density', label: 'Density', min: -0.05, max: 6, usual: { min: 0, max: 2.5 }, required: true }],
    startRows: 8,
    minRows: 2,
    maxRows: 500,
  },
  calculation: 'tone-value',
  properties: toneValueProperties,
  evaluate,
};

function evaluate(bench: BenchReadings) {
  const { columns, rows } = benchColumns(bench, ['nominalPct', 'density']);
  const at = (nominal: number) => columns.density.flatMap((density, place) => (columns.nominalPct[place] === nominal ? [density] : []));
  const [papers, solids] = [at(0), at(100)];
  const absolute = textIn(bench.conditions, 'densityBasis') === 'absolute';
  if (solids.length === 0) throw new InputError(`rows[${rows.length}].nominalPct`, null, 'The solid is missing: enter its density at 100 %.');
  if (absolute && papers.length === 0) throw new InputError(`rows[${rows.length}].nominalPct`, null, 'Absolute densities need that of the unprinted film: enter it at 0 %.');
  const tints = rows.map((index, place) => ({ index, nominalPct: columns.nominalPct[place]!, tint: columns.density[place]! })).filter(({ nominalPct }) => nominalPct > 0 && nominalPct < 100);
  if (tints.length === 0) throw new InputError(`rows[${rows.length}].nominalPct`, null, 'No tint has been read yet.');
  const input = {
    solid: solids,
    paper: absolute ? papers.reduce((sum, paper) => sum + paper, 0) / papers.length : 0,
    patches: tints.map(({ nominalPct, tint }) => ({ nominalPct, tint })),
    n: numberIn(bench.conditions, 'yuleNielsen'),
    reportAtPct: numberIn(bench.conditions, 'reportAtPct') ?? 50,
  };
  return runOnBench(toneValueCalculation, input, (field) => {
    const patch = /^patches\[(\d+)\]/.exec(field);
    if (patch) return `rows[${tints[Number(patch[1])]!.index}].density`;
    if (field.startsWith('solid')) return `rows[${rows[columns.nominalPct.indexOf(100)]}].density`;
    if (field.startsWith('paper')) return `rows[${rows[Math.max(0, columns.nominalPct.indexOf(0))]}].density`;
    return field === 'n' ? 'conditions.yuleNielsen' : `conditions.${field}`;
  });
}
