import { InputError } from '../calculation/input-error.ts';
import type { CalculationResult } from '../calculation/result.ts';
import { instrumentField } from '../method/instrument-field.ts';
import type { BenchReadings, Method } from '../method/method.ts';
import { readRows, type ReadRow } from '../method/read-rows.ts';
import { runOnRows } from '../method/run-on-rows.ts';
import { numberIn, textIn } from '../method/sheet.ts';
import { frictionCalculation } from './friction.calculation.ts';

/** Friction of film on film or on metal: sled forces typed or traced, or the angle at which a sled begins to slide. */
export const frictionMethod: Method = {
  id: 'friction',
  version: '1',
  title: 'Coefficient of friction',
  shortTitle: 'Friction',
  group: 'mechanical',
  standards: ['ASTM D1894', 'ISO 8295'],
  help: {
    shows: 'How hard it is to start (static) and to keep (kinetic) one face sliding over another. It does not show how film runs over hot or fast parts of a machine.',
    how: [
      'Condition the film at 23 °C and 50 % relative humidity. Handle it by the edges only.',
      'Wrap the sled (200 g, 63.5 mm square) with one face and fix the other to the plane, or to the metal that the film meets; mark the direction.',
      'Pull at 150 mm/min (ASTM D1894) or 100 mm/min (ISO 8295): the first peak is the static force, the mean while it slides the kinetic one. Type both, or read the trace.',
      'Inclined plane: raise it slowly and type the angle at which the sled begins to slide: static only.',
      'Fresh faces for every specimen: five pairs, three at the least.',
    ],
    spoils: [
      'Faces touched, slid before, creased or dusty; static charge.',
      'Slip agents that have not come to the surface yet, or have been taken off: state the hours since the film was made or printed.',
      'Forces in grams typed as newtons: the result is then a hundred times too large.',
      'Numbers of the two standards compared: they are not equivalent.',
    ],
  },
  cautions: [{ hazard: 'electrical', text: 'Film that slides charges up and may spark: no open solvents at this bench. Keep fingers off the moving sled; the maker’s instructions and local codes hold.' }],
  conditions: [
    {
      kind: 'choice',
      key: 'pairing',
      label: 'What slides on what',
      choices: [
        { value: 'print-print', label: 'Print on print', shortcut: 'p' },
        { value: 'back-back', label: 'Back on back', shortcut: 'b' },
        { value: 'print-back', label: 'Print on back', shortcut: 'x' },
        { value: 'film-metal', label: 'Film on metal', shortcut: 'm' },
        { value: 'other', label: 'Other', shortcut: 'o' },
      ],
      default: 'print-print',
      required: true,
    },
    { kind: 'number', key: 'sledMassG', label: 'Mass of the sled', unit: 'g', min: 0, minExclusive: true, max: 100_000, default: 200, usual: { min: 195, max: 205 } },
    { kind: 'number', key: 'speedMmPerMin', label: 'Speed', unit: 'mm/min', min: 0, minExclusive: true, max: 10_000, usual: { min: 90, max: 180 } },
    { kind: 'number', key: 'travelMm', label: 'Kinetic force of a trace over', unit: 'mm', min: 0, minExclusive: true, max: 10_000, hint: 'after the first peak; ISO 8295: 60. Empty: to its end.' },
    {
      kind: 'choice',
      key: 'direction',
      label: 'Direction',
      choices: [
        { value: 'machine', label: 'Machine direction', shortcut: 'm' },
        { value: 'cross', label: 'Across the web', shortcut: 'c' },
      ],
    },
    { kind: 'number', key: 'temperatureC', label: 'Temperature', unit: '°C', min: -50, max: 200, usual: { min: 21, max: 25 } },
    { kind: 'number', key: 'relativeHumidityPct', label: 'Relative humidity', unit: '%', min: 0, max: 100, usual: { min: 45, max: 55 } },
    instrumentField,
  ],
  readings: {
    rowName: 'specimen',
    fields: [
      { kind: 'number', key: 'staticN', label: 'Static force', unit: 'N', min: 0, max: 1000, usual: { min: 0.05, max: 4 } },
      { kind: 'number', key: 'kineticN', label: 'Kinetic force', unit: 'N', min: 0, max: 1000, usual: { min: 0.05, max: 4 } },
      { kind: 'trace', key: 'trace', label: 'Trace', hint: 'instead of forces' },
      { kind: 'number', key: 'angleDeg', label: 'Angle', unit: '°', min: 0, minExclusive: true, max: 89.9, usual: { min: 5, max: 60 }, hint: 'inclined plane' },
    ],
    startRows: 5,
    minRows: 1,
    maxRows: 100,
  },
  calculation: 'friction',
  properties: [
    { key: 'static', title: 'Static coefficient', unit: '', better: 'within', limited: true, headline: true, readingsFigure: 'static-readings' },
    { key: 'kinetic', title: 'Kinetic coefficient', unit: '', better: 'within', limited: true, headline: true, readingsFigure: 'kinetic-readings' },
  ],
  evaluate,
};

function evaluate(bench: BenchReadings): CalculationResult {
  const begun = readRows(bench, ['staticN', 'kineticN', 'trace', 'angleDeg']);
  if (begun.length === 0) throw new InputError('rows[0].staticN', null, 'Specimen 1 has no force yet: type the forces, read a trace, or type the angle of an inclined plane.');
  const input = {
    sledMassG: numberIn(bench.conditions, 'sledMassG'),
    travelMm: numberIn(bench.conditions, 'travelMm'),
    specimens: begun.map((row) => specimenOf(bench, row)),
  };
  return runOnRows(frictionCalculation, input, { list: 'specimens', rows: begun, first: 'staticN', conditions: ['sledMassG', 'travelMm'], cells: { points: 'trace' } });
}

/** @throws InputError (`rows[i].KEY`) for a row with none of its ways or several, or a trace in which the sled stood still. */
function specimenOf(bench: BenchReadings, { values, index }: ReadRow) {
  const [staticN, kineticN, angleDeg, key] = [numberIn(values, 'staticN'), numberIn(values, 'kineticN'), numberIn(values, 'angleDeg'), textIn(values, 'trace')];
  const ways = [staticN !== undefined || kineticN !== undefined ? 'forces' : null, key !== undefined ? 'a trace' : null, angleDeg !== undefined ? 'an angle' : null].filter((way) => way !== null);
  if (ways.length > 1) throw new InputError(`rows[${index}].${key !== undefined ? 'trace' : 'angleDeg'}`, null, `Specimen ${index + 1} has ${ways.join(' and ')}: keep one of them.`);
  if (key === undefined) return { staticN, kineticN, angleDeg };
  const trace = bench.traces[key];
  if (!trace) throw new InputError(`rows[${index}].trace`, key, `The trace of specimen ${index + 1} is not in the notebook; read its file again.`);
  const { displacementMm, forceN } = trace;
  if (displacementMm.every((at) => at === displacementMm[0])) {
    throw new InputError(`rows[${index}].trace`, key, `The trace of specimen ${index + 1} has no movement: its displacement stays at ${displacementMm[0]} mm, so the sled never slid.`);
  }
  return { points: Array.from(displacementMm, (at, point): [number, number] => [at, forceN[point]!]) };
}
