import { InputError } from '../calculation/input-error.ts';
import { instrumentField } from '../method/instrument-field.ts';
import type { BenchReadings, Method } from '../method/method.ts';
import { readRows } from '../method/read-rows.ts';
import { runOnRows } from '../method/run-on-rows.ts';
import { numberIn } from '../method/sheet.ts';
import { heatResistanceCalculation } from './heat-resistance.calculation.ts';

/** Specimens pressed by a heated jaw at rising temperatures: passes and failures. */
export const heatResistanceMethod: Method = {
  id: 'heat-resistance',
  version: '1',
  title: 'Heat resistance of the print',
  shortTitle: 'Heat resistance',
  group: 'mechanical',
  standards: [],
  help: {
    shows: 'The temperature at which the print begins to fail under a heated jaw, and the one at which half the specimens do, for one pressure and dwell. It does not show how the print stands heat without pressure, or how well the seal holds.',
    how: [
      'Say beforehand what counts as a failure: ink on the jaw or the foil, a mark, sticking, a change of colour or gloss.',
      'Set pressure and dwell as on the packing line; lay the print against the facing that it meets there.',
      'Test at least five fresh specimens at each temperature, from cool to hot, in steps of 5 or 10 °C.',
      'Go on until all fail, and see that at two temperatures or more some pass and some fail: only there is the temperature read.',
      'Clean the jaw after every failure, and let it come back to temperature.',
    ],
    spoils: [
      'Ink left on the jaw by the specimen before.',
      'A jaw that is not as hot as its display: measure its surface.',
      'A specimen pressed twice, or a print that has not dried or cured yet.',
      'Steps so wide that all pass at one and all fail at the next: then only a bracket is known.',
    ],
  },
  cautions: [
    { hazard: 'heat', text: 'The jaws burn and crush: keep hands out, never defeat a guard, let them cool before cleaning. The maker’s instructions and local codes hold.' },
    { hazard: 'solvent', text: 'Heated inks and coatings give off vapours: test under an exhaust. Never clean a hot jaw with solvent; the safety data sheet and local codes hold.' },
  ],
  conditions: [
    { kind: 'text', key: 'failure', label: 'What counts as a failure', maxLength: 200, required: true, hint: 'e.g. ink on the jaw' },
    {
      kind: 'choice',
      key: 'facing',
      label: 'Print pressed against',
      choices: [
        { value: 'foil', label: 'Aluminium foil', shortcut: 'a' },
        { value: 'itself', label: 'Itself', shortcut: 'i' },
        { value: 'jaw', label: 'The bare jaw', shortcut: 'j' },
        { value: 'ptfe', label: 'Non-stick cloth', shortcut: 'c' },
        { value: 'other', label: 'Other', shortcut: 'o' },
      ],
      default: 'foil',
    },
    { kind: 'number', key: 'pressureKPa', label: 'Jaw pressure', unit: 'kPa', min: 0, max: 10_000, usual: { min: 50, max: 600 }, hint: '10 kPa are 1 N/cm²' },
    { kind: 'number', key: 'dwellS', label: 'Dwell', unit: 's', min: 0, minExclusive: true, max: 600, usual: { min: 0.2, max: 5 } },
    { kind: 'text', key: 'apparatus', label: 'Apparatus', maxLength: 200, hint: 'heat sealer, jaws, which side heated' },
    instrumentField,
  ],
  readings: {
    rowName: 'temperature',
    fields: [
      { kind: 'number', key: 'celsius', label: 'Temperature', unit: '°C', min: -80, max: 600, usual: { min: 60, max: 260 }, required: true },
      { kind: 'number', key: 'tested', label: 'Tested', min: 1, max: 10_000, usual: { min: 3, max: 200 }, required: true, carryDown: true },
      { kind: 'number', key: 'failed', label: 'Failed', min: 0, max: 10_000, required: true },
    ],
    startRows: 6,
    minRows: 2,
    maxRows: 100,
  },
  calculation: 'heat-resistance',
  properties: [
    { key: 't05', title: 'Temperature at which 5 % fail', unit: '°C', better: 'higher', limited: true, headline: true },
    { key: 't50', title: 'Temperature at which half fail', unit: '°C', better: 'higher', limited: true, headline: true },
  ],
  evaluate,
};

function evaluate(bench: BenchReadings) {
  // The number tested is carried down: it alone begins no row.
  const begun = readRows(bench, ['celsius', 'failed']);
  if (begun.length === 0) throw new InputError('rows[0].celsius', null, 'No temperature has been tested yet.');
  const steps = begun.map(({ values }) => ({ celsius: numberIn(values, 'celsius'), tested: numberIn(values, 'tested'), failed: numberIn(values, 'failed') }));
  return runOnRows(heatResistanceCalculation, { steps }, { list: 'steps', rows: begun, first: 'celsius' });
}
