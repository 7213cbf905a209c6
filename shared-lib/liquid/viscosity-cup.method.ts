import { InputError } from '../calculation/input-error.ts';
import type { CalculationResult } from '../calculation/result.ts';
import { instrumentField } from '../method/instrument-field.ts';
import type { BenchReadings, Method } from '../method/method.ts';
import { runOnBench } from '../method/run-on-bench.ts';
import { numberIn, textIn } from '../method/sheet.ts';
import { cupField } from './cup-field.ts';
import { viscosityCupCalculation } from './viscosity-cup.calculation.ts';

/** Viscosity of an ink, varnish or adhesive from the seconds that a cup takes to run out. */
export const viscosityCupMethod: Method = {
  id: 'viscosity-cup',
  version: '1',
  title: 'Viscosity by flow cup',
  shortTitle: 'Flow cup',
  group: 'liquid',
  standards: ['ASTM D1200', 'ASTM D4212', 'ISO 2431', 'DIN 53211'],
  help: {
    shows: 'How thick a liquid runs, as seconds of one cup and as kinematic viscosity, by which cups can be compared. Right for liquids that flow alike however fast; an ink that thins when it is stirred has no single figure.',
    how: [
      'Bring ink and cup to the temperature of the standard and note it.',
      'Stir without drawing air in; for a strained sample note the sieve.',
      'Fill to the brim, or dip and lift; start the clock when flow begins, or when the rim leaves the ink.',
      'Stop at the first break of the stream. Three runs; clean the hole between them.',
    ],
    spoils: ['Ink a few degrees too warm or cold.', 'A hole that is dirty, scratched or worn: check the cup with an oil of known viscosity.', 'Foam, skin, or ink that has stood and thickened.', 'A time outside the range of the cup: take another cup.'],
  },
  cautions: [{ hazard: 'solvent', text: 'Inks and solvents for cleaning: ventilation, gloves, no flames; earth metal cups and cans; heed the safety data sheets and local codes.' }],
  conditions: [
    cupField,
    { kind: 'number', key: 'temperatureC', label: 'Temperature of the ink', unit: '°C', min: -50, max: 200, usual: { min: 18, max: 27 } },
    { kind: 'number', key: 'densityGCm3', label: 'Density of the ink', unit: 'g/cm³', min: 0, minExclusive: true, max: 25, usual: { min: 0.8, max: 1.6 }, hint: 'For the dynamic viscosity.' },
    { kind: 'text', key: 'stirred', label: 'Stirred', maxLength: 200, hint: 'how long ago, how' },
    instrumentField,
  ],
  readings: {
    rowName: 'run',
    fields: [{ kind: 'number', key: 'seconds', label: 'Flow time', unit: 's', min: 0, minExclusive: true, max: 10_000, usual: { min: 15, max: 150 }, required: true }],
    startRows: 3,
    minRows: 1,
    maxRows: 200,
  },
  calculation: 'viscosity-cup',
  properties: [
    { key: 'seconds', title: 'Flow time', unit: 's', better: 'within', limited: true, headline: true },
    { key: 'kinematicMm2S', title: 'Kinematic viscosity', unit: 'mm²/s', better: 'within', limited: true, headline: true, readingsFigure: 'flow-times' },
    { key: 'dynamicMPaS', title: 'Dynamic viscosity', unit: 'mPa·s', better: 'within', limited: true, headline: false },
  ],
  evaluate,
};

function evaluate(bench: BenchReadings): CalculationResult {
  const runs = bench.rows.flatMap(({ values }, index) => {
    const seconds = numberIn(values, 'seconds');
    return seconds === undefined ? [] : [{ index, seconds }];
  });
  if (runs.length === 0) throw new InputError('rows[0].seconds', null, 'No flow time has been read yet.');
  const input = {
    cup: textIn(bench.conditions, 'cup'),
    seconds: runs.map(({ seconds }) => seconds),
    temperatureC: numberIn(bench.conditions, 'temperatureC'),
    densityGCm3: numberIn(bench.conditions, 'densityGCm3'),
  };
  return runOnBench(viscosityCupCalculation, input, (field) => {
    const place = /^seconds(?:\[(\d+)\])?$/.exec(field);
    return place ? `rows[${runs[Number(place[1] ?? 0)]!.index}].seconds` : `conditions.${field}`;
  });
}
