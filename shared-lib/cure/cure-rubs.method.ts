import { InputError } from '../calculation/input-error.ts';
import type { CalculationResult } from '../calculation/result.ts';
import { instrumentField } from '../method/instrument-field.ts';
import type { BenchReadings, Method } from '../method/method.ts';
import { readRows } from '../method/read-rows.ts';
import { runOnRows } from '../method/run-on-rows.ts';
import { limitOn, numberIn, textIn } from '../method/sheet.ts';
import { cureRubsCalculation } from './cure-rubs.calculation.ts';

/** Solvent double rubs on a cured print or coating. */
export const cureRubsMethod: Method = {
  id: 'cure-rubs',
  version: '1',
  title: 'Solvent double rubs',
  shortTitle: 'Solvent rubs',
  group: 'cure',
  standards: ['ASTM D5402', 'ASTM D4752'],
  help: {
    shows: 'How many double rubs with a solvent the surface stands. It does not show conversion: a hard skin over a soft layer passes, and a well cured ink of another chemistry may fail. Compare only with the same ink, solvent and hand.',
    how: [
      'State solvent, cloth, load and length of the stroke; keep to the hours since cure.',
      'Soak the cloth on the finger or the weight, and wet it again every 25 double rubs or as agreed.',
      'Rub forward and back over the same 100 to 150 mm at about one double rub a second; that is one double rub.',
      'Watch the middle of the track, not its ends. Stop at the double rub that first shows the film and type its number.',
      'If it is still whole at the agreed count, stop, type the count and choose “no”: it counts as a lower bound.',
      'Rub three specimens or more, each with fresh cloth.',
    ],
    spoils: [
      'A cloth that dries out, or one full of ink.',
      'Another hand, load or speed: have one person rub what is to be compared, or use a machine.',
      'Ends of the track, where the cloth turns.',
      'Film that the solvent swells: rub the bare film too.',
    ],
  },
  cautions: [
    { hazard: 'solvent', text: 'The solvent is flammable and goes through skin and lungs: gloves that it does not pass, eye protection, exhaust, no flame or spark. Its safety data sheet and local codes hold.' },
    { hazard: 'toxic', text: 'Cloth and gloves carry solvent and uncured ink, which may sensitise the skin: into a closed bin, as local rules on waste say.' },
  ],
  conditions: [
    { kind: 'text', key: 'solvent', label: 'Solvent', maxLength: 100, required: true, hint: 'e.g. ethanol, ethyl acetate' },
    { kind: 'number', key: 'requiredDoubleRubs', label: 'Double rubs asked for', min: 1, max: 100_000, usual: { min: 10, max: 200 } },
    { kind: 'text', key: 'cloth', label: 'Cloth', maxLength: 100 },
    { kind: 'number', key: 'loadG', label: 'Load', unit: 'g', min: 0, minExclusive: true, max: 100_000, usual: { min: 300, max: 2500 } },
    { kind: 'number', key: 'hoursSinceCure', label: 'Since cure', unit: 'h', min: 0, max: 100_000 },
    instrumentField,
  ],
  readings: {
    rowName: 'specimen',
    fields: [
      { kind: 'text', key: 'label', label: 'Specimen', maxLength: 100, hint: 'colour or place' },
      { kind: 'number', key: 'doubleRubs', label: 'Double rubs', min: 1, max: 100_000, usual: { min: 1, max: 500 }, required: true },
      {
        kind: 'choice',
        key: 'brokeThrough',
        label: 'Broke through',
        required: true,
        choices: [
          { value: 'yes', label: 'yes', shortcut: 'y' },
          { value: 'no', label: 'no, stopped whole', shortcut: 'n' },
        ],
      },
    ],
    startRows: 3,
    minRows: 1,
    maxRows: 500,
  },
  calculation: 'cure-rubs',
  properties: [
    { key: 'doubleRubs', title: 'Double rubs to break-through', unit: 'double rubs', better: 'higher', limited: true, headline: true, readingsFigure: 'lasting' },
    { key: 'least', title: 'Weakest specimen', unit: 'double rubs', better: 'higher', limited: true, asRead: true, headline: true },
    { key: 'median', title: 'Median double rubs', unit: 'double rubs', better: 'higher', limited: true, headline: false },
    { key: 'shareStandingPct', title: 'Specimens that stand what is asked', unit: '%', better: 'higher', limited: true, headline: false },
  ],
  evaluate,
};

function evaluate(bench: BenchReadings): CalculationResult {
  const begun = readRows(bench, ['doubleRubs', 'brokeThrough']);
  if (begun.length === 0) throw new InputError('rows[0].doubleRubs', null, 'No specimen has been rubbed yet.');
  const specimens = begun.map(({ values, index }) => {
    const brokeThrough = textIn(values, 'brokeThrough');
    if (brokeThrough === undefined) throw new InputError(`rows[${index}].brokeThrough`, null, `Say of specimen ${index + 1} whether it broke through: a count that it outlasted is only a lower bound.`);
    return { label: textIn(values, 'label') ?? `${index + 1}`, doubleRubs: numberIn(values, 'doubleRubs'), brokeThrough: brokeThrough === 'yes' };
  });
  const least = limitOn(bench, 'least')?.lower ?? undefined;
  const requiredDoubleRubs = numberIn(bench.conditions, 'requiredDoubleRubs') ?? (least !== undefined && least >= 1 ? Math.ceil(least) : undefined);
  return runOnRows(cureRubsCalculation, { specimens, requiredDoubleRubs }, { list: 'specimens', rows: begun, first: 'doubleRubs', conditions: ['requiredDoubleRubs'] });
}
