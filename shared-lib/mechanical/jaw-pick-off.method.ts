import { InputError } from '../calculation/input-error.ts';
import { instrumentField } from '../method/instrument-field.ts';
import type { BenchReadings, Method } from '../method/method.ts';
import { readRows } from '../method/read-rows.ts';
import { runOnRows } from '../method/run-on-rows.ts';
import { numberIn } from '../method/sheet.ts';
import { gradeField } from './grade-field.ts';
import { jawPickOffCalculation } from './jaw-pick-off.calculation.ts';
import { hoursSincePrinting } from './room-conditions.ts';

/** Print pressed by a hot sealing jaw: from which temperature does the jaw take ink with it? */
export const jawPickOffMethod: Method = {
  id: 'jaw-pick-off',
  version: '1',
  title: 'Print picked off by a sealing jaw',
  shortTitle: 'Sealing-jaw pick-off',
  group: 'mechanical',
  standards: [],
  help: {
    shows: 'From which jaw temperature on a sealing jaw picks print off or smears it, at the pressure and time of the packing line, and how far that lies above the sealing temperature.',
    how: [
      'Set jaw face, pressure and time as on the line. Let the jaws settle at the lowest temperature; check with a surface probe.',
      'Seal with the print against the jaw, as it will run. At least three seals at each temperature.',
      'After each seal look at the print and wipe the jaw with a white cloth: ink on either is pick-off. Clean the jaw before the next seal.',
      'Go up in steps of 10 °C or finer, past the sealing temperature, until print comes off or the jaws end.',
      'Grade: 5 nothing, 4 a trace on the cloth only, 3 a change in gloss or a print of the jaw, 2 spots picked off, 1 large areas, 0 the print is gone.',
      'Nothing comes off: the result is a lower bound, which is an answer.',
    ],
    spoils: ['Ink left on the jaw from the seal before.', 'A jaw that is hotter than its display says, or not warm all over.', 'Another jaw face: a coated or fabric-covered jaw lets go more easily than steel.', 'Print not yet dry or cured; a film that shrinks away.'],
  },
  cautions: [
    { hazard: 'heat', text: 'Sealing jaws burn and crush: keep guards and two-hand switches in use, wear heat-resistant gloves, let jaws cool before cleaning. The maker’s instructions, local codes and trained staff come first.' },
    { hazard: 'solvent', text: 'Hot prints may give off fumes: extraction on; heed the safety data sheet and local codes. No solvent on a hot jaw.' },
  ],
  conditions: [
    { kind: 'number', key: 'sealingC', label: 'Sealing temperature', unit: '°C', min: 0, max: 500, usual: { min: 80, max: 250 }, hint: 'of the jaw on the packing line' },
    { kind: 'number', key: 'pressureNPerCm2', label: 'Jaw pressure', unit: 'N/cm²', min: 0, minExclusive: true, max: 1000, usual: { min: 10, max: 100 }, required: true, hint: '10 kPa are 1 N/cm²' },
    { kind: 'number', key: 'dwellS', label: 'Dwell', unit: 's', min: 0, minExclusive: true, max: 600, usual: { min: 0.1, max: 3 }, required: true },
    {
      kind: 'choice',
      key: 'jawFace',
      label: 'Jaw face',
      required: true,
      default: 'steel',
      choices: [
        { value: 'steel', label: 'bare metal', shortcut: 'm' },
        { value: 'coated', label: 'non-stick coating', shortcut: 'c' },
        { value: 'fabric', label: 'coated fabric', shortcut: 'f' },
      ],
    },
    { kind: 'number', key: 'pickedBelow', label: 'Picked off: grades below', min: 1, max: 5, default: 5, usual: { min: 4, max: 5 }, required: true },
    hoursSincePrinting,
    instrumentField,
  ],
  readings: {
    rowName: 'seal',
    fields: [
      { kind: 'number', key: 'celsius', label: 'Jaw', unit: '°C', min: 0, max: 500, usual: { min: 80, max: 250 }, required: true, carryDown: true },
      gradeField(true, '5 nothing … 0 the print is gone'),
      {
        kind: 'choice',
        key: 'found',
        label: 'Print found',
        choices: [
          { value: 'nowhere', label: 'only where it was', shortcut: 'n' },
          { value: 'jaw', label: 'on the jaw', shortcut: 'j' },
          { value: 'smeared', label: 'smeared', shortcut: 's' },
          { value: 'facing', label: 'on the facing film', shortcut: 'f' },
        ],
      },
    ],
    startRows: 9,
    minRows: 1,
    maxRows: 200,
  },
  calculation: 'jaw-pick-off',
  properties: [
    { key: 'begins', title: 'Pick-off begins', unit: '°C', better: 'higher', limited: true, headline: true },
    { key: 'margin', title: 'Margin above the sealing temperature', unit: '°C', better: 'higher', limited: true, headline: true },
    { key: 'gradeAtSealing', title: 'Grade at the sealing temperature', unit: '', better: 'higher', kind: 'grade', limited: true, headline: false },
    { key: 'worst', title: 'Worst grade', unit: '', better: 'higher', kind: 'grade', limited: true, asRead: true, headline: false },
  ],
  evaluate,
};

function evaluate(bench: BenchReadings) {
  const read = readRows(bench, ['grade']);
  if (read.length === 0) throw new InputError('rows[0].grade', null, 'No seal has a grade yet.');
  const seals = read.map(({ values }) => ({ celsius: numberIn(values, 'celsius'), grade: numberIn(values, 'grade') }));
  const stated = { sealingC: numberIn(bench.conditions, 'sealingC'), pickedBelow: numberIn(bench.conditions, 'pickedBelow') };
  return runOnRows(jawPickOffCalculation, { seals, ...stated }, { list: 'seals', rows: read, first: 'grade', conditions: Object.keys(stated) });
}
