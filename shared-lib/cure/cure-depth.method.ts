import { InputError } from '../calculation/input-error.ts';
import type { CalculationResult } from '../calculation/result.ts';
import { apparatusField, instrumentField } from '../method/instrument-field.ts';
import type { BenchReadings, Method } from '../method/method.ts';
import { readRows } from '../method/read-rows.ts';
import { runOnRows } from '../method/run-on-rows.ts';
import { numberIn } from '../method/sheet.ts';
import { cureDepthCalculation } from './cure-depth.calculation.ts';

const CONDITIONS = ['filmUm', 'drawdownUm', 'workingDoseMJPerCm2'];

/** Depth to which UV light cures an ink, from drawdowns exposed through the film and wiped. */
export const cureDepthMethod: Method = {
  id: 'cure-depth',
  version: '1',
  title: 'Depth of cure',
  shortTitle: 'Depth of cure',
  group: 'cure',
  standards: [],
  help: {
    shows: 'How deep the light sets the ink, and the dose that takes it through the printed thickness. It does not show how far the reaction has gone there, how well the layer sticks, or what may migrate.',
    how: [
      'Make drawdowns several times thicker than the print on clear film; measure their thickness.',
      'Expose them through the clear film, so that the cured layer stays on it, at four doses or more, each about twice the one before. Measure the dose with a radiometer of the lamp’s band.',
      'Wipe off what is not set with the stated solvent, once, without rubbing; let it dry.',
      'Measure the thickness that stays, in three places, and type each with its dose.',
      'Include the dose of the press, to see what share of the print it sets.',
    ],
    spoils: [
      'A drawdown that is cured through: its thickness, not the light, then ends the depth.',
      'Clear film that takes away the lamp’s light: measure the dose behind it.',
      'A wipe that rubs off what is set, or leaves what is not.',
      'Another lamp, another pigment or load of pigment: the line is of this ink under this lamp.',
    ],
  },
  cautions: [
    { hazard: 'uv', text: 'The lamp gives strong UV light and heat, and some make ozone: never look into it, never defeat an interlock, run the exhaust. The maker’s instructions and local codes hold.' },
    { hazard: 'toxic', text: 'Uncured ink may sensitise the skin: gloves, and waste as local rules say. The safety data sheet holds.' },
    { hazard: 'solvent', text: 'Wiping solvent: little of it, exhaust, gloves, no flame. Its safety data sheet and local codes hold.' },
  ],
  conditions: [
    { kind: 'number', key: 'filmUm', label: 'Thickness of the printed ink', unit: 'µm', min: 0, minExclusive: true, max: 100_000, usual: { min: 0.5, max: 30 }, required: true },
    { kind: 'number', key: 'drawdownUm', label: 'Thickness of the drawdown', unit: 'µm', min: 0, minExclusive: true, max: 100_000, usual: { min: 10, max: 500 } },
    { kind: 'number', key: 'workingDoseMJPerCm2', label: 'Dose of the press', unit: 'mJ/cm²', min: 0, minExclusive: true, max: 1_000_000, usual: { min: 20, max: 1000 } },
    { kind: 'text', key: 'lamp', label: 'Lamp and band', maxLength: 200, hint: 'e.g. LED 395 nm; radiometer' },
    { kind: 'text', key: 'solvent', label: 'Wiped with', maxLength: 100 },
    instrumentField,
    apparatusField('radiometer', 'Radiometer'),
  ],
  readings: {
    rowName: 'reading',
    fields: [
      { kind: 'number', key: 'doseMJPerCm2', label: 'Dose', unit: 'mJ/cm²', min: 0, minExclusive: true, max: 1_000_000, usual: { min: 5, max: 2000 }, required: true, carryDown: true },
      { kind: 'number', key: 'curedUm', label: 'Cured depth', unit: 'µm', min: 0, max: 100_000, usual: { min: 0, max: 500 }, required: true },
    ],
    startRows: 6,
    minRows: 1,
    maxRows: 500,
  },
  calculation: 'cure-depth',
  properties: [
    { key: 'doseThrough', title: 'Dose that cures the print through', unit: 'mJ/cm²', better: 'lower', limited: true, headline: true },
    { key: 'curedPct', title: 'Share of the print cured at the press dose', unit: '%', better: 'higher', limited: true, headline: true },
    { key: 'doseMargin', title: 'Press dose over the dose needed', unit: '', better: 'higher', limited: true, headline: false },
    { key: 'penetrationDepth', title: 'Penetration depth', unit: 'µm', better: 'higher', limited: true, headline: false },
    { key: 'criticalDose', title: 'Critical dose', unit: 'mJ/cm²', better: 'lower', limited: true, headline: false },
  ],
  evaluate,
};

function evaluate(bench: BenchReadings): CalculationResult {
  // The dose is carried down: it alone begins no row.
  const begun = readRows(bench, ['curedUm']);
  if (begun.length === 0) throw new InputError('rows[0].curedUm', null, 'No cured depth has been read yet.');
  const readings = begun.map(({ values }) => ({ doseMJPerCm2: numberIn(values, 'doseMJPerCm2'), curedUm: numberIn(values, 'curedUm') }));
  const stated = Object.fromEntries(CONDITIONS.map((key) => [key, numberIn(bench.conditions, key)]));
  return runOnRows(cureDepthCalculation, { readings, ...stated }, { list: 'readings', rows: begun, first: 'curedUm', conditions: CONDITIONS });
}
