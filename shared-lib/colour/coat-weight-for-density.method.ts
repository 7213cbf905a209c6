import { instrumentField } from '../method/instrument-field.ts';
import type { BenchReadings, Method } from '../method/method.ts';
import { runOnBench } from '../method/run-on-bench.ts';
import { numberIn, textIn } from '../method/sheet.ts';
import { benchColumns } from './bench-columns.ts';
import { coatWeightStrengthCalculation } from './coat-weight-strength.calculation.ts';
import { backingField } from './density-conditions.ts';

/** From 'too light' to 'add so much': density or strength over coat weight from the lab's own drawdowns. */
export const coatWeightForDensityMethod: Method = {
  id: 'coat-weight-for-density',
  version: '1',
  title: 'Change of coat weight for a density or strength',
  shortTitle: 'Coat weight for density',
  group: 'colour',
  standards: [],
  help: {
    shows: 'How much more or less ink a print needs to reach its density or strength, with the interval that the drawdowns allow.',
    how: [
      'Draw down the ink on the film at five or more coat weights on both sides of the target; weigh each.',
      'Read each drawdown: one row. Densities minus film.',
      'Enter what the print reads now and what it should read. The answer says how many percent of coat weight to add or take off.',
    ],
    spoils: ['Drawdowns on another film or at another viscosity than the press runs.', 'A target beyond the drawdowns: it is flagged; make one there.', 'Coat weights from a bar’s nominal number, not from the balance.'],
  },
  cautions: [{ hazard: 'solvent', text: 'Wet drawdowns give off solvent: extraction, no flame or spark, gloves. The safety data sheet and local codes go first.' }],
  conditions: [
    {
      kind: 'choice',
      key: 'quantity',
      label: 'Reading',
      required: true,
      default: 'density',
      choices: [
        { value: 'density', label: 'density minus film', shortcut: 'd' },
        { value: 'strengthPct', label: 'strength, %', shortcut: 's' },
        { value: 'absorption', label: 'K/S', shortcut: 'k' },
      ],
    },
    { kind: 'number', key: 'present', label: 'The print reads', min: 0, minExclusive: true, max: 1000, required: true },
    { kind: 'number', key: 'target', label: 'It should read', min: 0, minExclusive: true, max: 1000, required: true },
    { kind: 'number', key: 'presentCoatWeightGM2', label: 'Its coat weight', unit: 'g/m²', min: 0, minExclusive: true, max: 500, hint: 'where it was weighed; else it follows from its reading' },
    { kind: 'number', key: 'coatWeightChangePct', label: 'Try a change of', unit: '%', min: -99, max: 1000, hint: 'what would it read then?' },
    backingField,
    instrumentField,
  ],
  readings: {
    rowName: 'drawdown',
    fields: [
      { kind: 'number', key: 'coatWeightGM2', label: 'Coat weight', unit: 'g/m²', min: 0, minExclusive: true, max: 500, usual: { min: 0.3, max: 10 }, required: true },
      { kind: 'number', key: 'reading', label: 'Reading', min: -0.05, max: 1000, required: true },
    ],
    startRows: 6,
    minRows: 4,
    maxRows: 200,
  },
  calculation: 'coat-weight-strength',
  properties: [
    { key: 'changePct', title: 'Coat weight to add', unit: '%', better: 'within', limited: true, headline: true },
    { key: 'targetCoatWeight', title: 'Coat weight for the target', unit: 'g/m²', better: 'within', limited: true, headline: true },
    { key: 'presentCoatWeight', title: 'Present coat weight', unit: 'g/m²', better: 'within', limited: true, headline: false },
    { key: 'expectedReading', title: 'Reading after the change tried', unit: '', better: 'within', limited: true, headline: false },
  ],
  evaluate,
};

function evaluate(bench: BenchReadings) {
  const { columns, rows } = benchColumns(bench, ['coatWeightGM2', 'reading']);
  const { conditions } = bench;
  const input = {
    drawdowns: rows.map((_, place) => ({ coatWeightGM2: columns.coatWeightGM2[place]!, reading: columns.reading[place]! })),
    quantity: textIn(conditions, 'quantity') ?? 'density',
    present: numberIn(conditions, 'present'),
    target: numberIn(conditions, 'target'),
    presentCoatWeightGM2: numberIn(conditions, 'presentCoatWeightGM2'),
    coatWeightChangePct: numberIn(conditions, 'coatWeightChangePct'),
  };
  return runOnBench(coatWeightStrengthCalculation, input, (field) => {
    const [, place, key] = /^drawdowns\[(\d+)\](?:\.(\w+))?/.exec(field) ?? [];
    if (place !== undefined) return `rows[${rows[Number(place)]}].${key ?? 'reading'}`;
    return field === 'drawdowns' ? '' : `conditions.${field}`;
  });
}
