import { InputError } from '../calculation/input-error.ts';
import type { CalculationResult } from '../calculation/result.ts';
import { instrumentField } from '../method/instrument-field.ts';
import type { BenchReadings, Method } from '../method/method.ts';
import { readRows } from '../method/read-rows.ts';
import { runOnRows } from '../method/run-on-rows.ts';
import { numberIn } from '../method/sheet.ts';
import { coatWeightCalculation } from './coat-weight.calculation.ts';

const CM2_PER_M2 = 10_000;
const STATED = ['solidsPct', 'dryDensityGCm3', 'readabilityMg'];

/** How much ink, varnish or adhesive lies on the film, by weighing a piece with and without it. */
export const coatWeightMethod: Method = {
  id: 'coat-weight',
  version: '1',
  title: 'Coat weight by weighing',
  shortTitle: 'Coat weight',
  group: 'liquid',
  standards: [],
  help: {
    shows: 'How much ink, varnish or adhesive lies on a square metre, dry and, with its solids or a wet weighing, as it left the press or the bar.',
    how: [
      'Cut pieces of known area with a die or template, five or more across the web, from a solid.',
      'Weigh each piece with its dry coat.',
      'Strip the coat with a solvent that leaves the film alone, wipe, let it dry, and weigh again; or, for a drawdown, weigh the piece before it is coated.',
      'For the wet coat weigh at once after coating, before anything dries, or state the solids of the ink.',
      'Let film and balance come to the same temperature; keep charge away with an ionising bar.',
    ],
    spoils: ['Ink left on the film, or film taken off with it: strip an unprinted piece as well.', 'A piece that is still wet, or film that took solvent up.', 'Charge, draught, fingerprints on the balance.', 'An area that is not what it is said to be: 1 % of area is 1 % of coat.', 'A coat of a few milligrams on a balance that shows no tenth of one.'],
  },
  cautions: [
    { hazard: 'solvent', text: 'Solvent for stripping: little of it, with ventilation and gloves, away from flames; heed its safety data sheet and local codes.' },
    { hazard: 'blade', text: 'Dies and blades cut: keep the guard on and follow the shop’s rules for blades.' },
  ],
  conditions: [
    { kind: 'number', key: 'areaCm2', label: 'Area of each piece', unit: 'cm²', min: 0, minExclusive: true, max: 100_000, default: 100, usual: { min: 25, max: 1000 }, required: true },
    { kind: 'number', key: 'solidsPct', label: 'Solids of the wet ink', unit: '%', min: 0, minExclusive: true, max: 100, usual: { min: 10, max: 60 }, hint: 'Only where the wet coat is not weighed.' },
    { kind: 'number', key: 'dryDensityGCm3', label: 'Density of the dry coat', unit: 'g/cm³', min: 0, minExclusive: true, max: 25, usual: { min: 0.9, max: 2.5 }, hint: 'For its thickness.' },
    { kind: 'number', key: 'readabilityMg', label: 'Step of the balance', unit: 'mg', min: 0, minExclusive: true, max: 1000, default: 0.1, usual: { min: 0.01, max: 1 } },
    { kind: 'text', key: 'strippedWith', label: 'Stripped with', maxLength: 200 },
    instrumentField,
  ],
  readings: {
    rowName: 'piece',
    fields: [
      { kind: 'text', key: 'label', label: 'Piece', maxLength: 100, hint: 'where it was cut' },
      { kind: 'number', key: 'wetG', label: 'Wet', unit: 'g', min: 0, minExclusive: true, max: 10_000, hint: 'Just after coating, if weighed.' },
      { kind: 'number', key: 'coatedG', label: 'With dry coat', unit: 'g', min: 0, minExclusive: true, max: 10_000, required: true },
      { kind: 'number', key: 'bareG', label: 'Without coat', unit: 'g', min: 0, minExclusive: true, max: 10_000, required: true, hint: 'Stripped, or before it was coated.' },
    ],
    startRows: 5,
    minRows: 1,
    maxRows: 500,
  },
  calculation: 'coat-weight',
  properties: [
    { key: 'dry', title: 'Dry coat weight', unit: 'g/m²', better: 'within', limited: true, headline: true, readingsFigure: 'coat-weights' },
    { key: 'wet', title: 'Wet coat weight', unit: 'g/m²', better: 'within', limited: true, headline: true },
    { key: 'solidsPct', title: 'Solids as weighed', unit: '%', better: 'within', limited: true, headline: false },
    { key: 'thicknessUm', title: 'Dry thickness', unit: 'µm', better: 'within', limited: true, headline: false },
    { key: 'spread', title: 'Spread of the pieces', unit: 'g/m²', better: 'lower', limited: true, headline: false },
  ],
  evaluate,
};

function evaluate(bench: BenchReadings): CalculationResult {
  const { conditions } = bench;
  const areaCm2 = numberIn(conditions, 'areaCm2');
  if (areaCm2 === undefined) throw new InputError('conditions.areaCm2', null, 'The area of each piece is missing; the coat is per area.');
  const weighed = readRows(bench, ['coatedG']).filter(({ values }) => numberIn(values, 'bareG') !== undefined);
  if (weighed.length === 0) throw new InputError('rows[0].coatedG', null, 'No piece has been weighed with and without its coat yet.');
  const input = {
    specimens: weighed.map(({ values }) => ({ areaM2: areaCm2 / CM2_PER_M2, coatedG: numberIn(values, 'coatedG'), bareG: numberIn(values, 'bareG'), wetG: numberIn(values, 'wetG') })),
    ...Object.fromEntries(STATED.map((key) => [key, numberIn(conditions, key)])),
  };
  return runOnRows(coatWeightCalculation, input, { list: 'specimens', rows: weighed, first: 'coatedG', conditions: STATED, cells: { areaM2: 'conditions.areaCm2' } });
}
