import { InputError } from '../calculation/input-error.ts';
import type { CalculationResult } from '../calculation/result.ts';
import type { BenchReadings, Method } from '../method/method.ts';
import { readRows } from '../method/read-rows.ts';
import { runOnRows } from '../method/run-on-rows.ts';
import { numberIn, textIn } from '../method/sheet.ts';
import { tapeLabelLiftCalculation } from './tape-label-lift.calculation.ts';

/** Tape or label pressed on soon after cure and pulled off: ink lifted, and whether the adhesive still sticks. */
export const tapeLabelLiftMethod: Method = {
  id: 'tape-label-lift',
  version: '1',
  title: 'Tape-and-label lift',
  shortTitle: 'Tape and label lift',
  group: 'cure',
  standards: ['ASTM F2252'],
  help: {
    shows: 'Whether a print straight off the press holds against a tape or label, and whether it gives anything off to the adhesive. It cannot tell poor cure from poor adhesion, and an adhesive also dies of wax, silicone or slip agent.',
    how: [
      'Use one tape or label, within its shelf life; discard the first turns of the roll.',
      'Press it on with a roller of stated weight, twice, over solids and overprints; leave no bubbles.',
      'Wait the stated dwell: a minute for a quick look on press, a day for labels that will stay on.',
      'Pull it off by hand at a steady angle, within a second; keep it on white paper beside the print.',
      'Enter the share of the covered area from which ink came off; 0 if none.',
      'Press the pulled tape on bare film: if it no longer sticks, choose “no”.',
    ],
    spoils: [
      'Another tape, angle or speed: this alone can turn a pass into a failure.',
      'A film that stretches or tears under the pull.',
      'Dust or fingers on the adhesive before the look whether it sticks.',
      'Prints at different hours since cure compared: dark reaction goes on for a day.',
    ],
  },
  cautions: [{ hazard: 'toxic', text: 'Uncured ink on tape and film may sensitise the skin: gloves; the safety data sheet and local codes hold.' }],
  conditions: [
    {
      kind: 'choice',
      key: 'pulled',
      label: 'Pulled off',
      choices: [
        { value: 'tape', label: 'Tape', shortcut: 't' },
        { value: 'label', label: 'Label', shortcut: 'l' },
      ],
      default: 'tape',
      required: true,
    },
    { kind: 'item', of: 'fluid', key: 'tape', label: 'Which one', hint: 'one of Materials, Instruments and fluids, or kind, width, lot' },
    { kind: 'number', key: 'dwellMin', label: 'Dwell', unit: 'min', min: 0, max: 100_000, usual: { min: 0.5, max: 1500 } },
    { kind: 'number', key: 'angleDeg', label: 'Angle of the pull', unit: '°', min: 0, max: 180, usual: { min: 60, max: 180 } },
    { kind: 'number', key: 'hoursSinceCure', label: 'Since cure', unit: 'h', min: 0, max: 100_000 },
  ],
  readings: {
    rowName: 'specimen',
    fields: [
      { kind: 'text', key: 'label', label: 'Place', maxLength: 100, hint: 'colour or place on the web' },
      { kind: 'number', key: 'liftedPct', label: 'Area lifted', unit: '%', min: 0, max: 100, required: true },
      {
        kind: 'choice',
        key: 'adhesiveSticks',
        label: 'Adhesive still sticks',
        choices: [
          { value: 'yes', label: 'yes', shortcut: 'y' },
          { value: 'no', label: 'no', shortcut: 'n' },
        ],
      },
    ],
    startRows: 5,
    minRows: 1,
    maxRows: 500,
  },
  calculation: 'tape-label-lift',
  properties: [
    { key: 'liftedPct', title: 'Area lifted', unit: '%', better: 'lower', limited: true, headline: true, readingsFigure: 'lifted' },
    { key: 'worstPct', title: 'Worst specimen', unit: '%', better: 'lower', limited: true, asRead: true, headline: true },
    { key: 'specimensLiftedPct', title: 'Specimens with any lift', unit: '%', better: 'lower', limited: true, headline: false },
    { key: 'adhesiveDeadPct', title: 'Adhesives that no longer stick', unit: '%', better: 'lower', limited: true, headline: false },
  ],
  evaluate,
};

function evaluate(bench: BenchReadings): CalculationResult {
  const begun = readRows(bench, ['liftedPct', 'adhesiveSticks']);
  if (begun.length === 0) throw new InputError('rows[0].liftedPct', null, 'No tape or label has been pulled yet.');
  const specimens = begun.map(({ values, index }) => {
    const sticks = textIn(values, 'adhesiveSticks');
    return { label: textIn(values, 'label') ?? `${index + 1}`, liftedPct: numberIn(values, 'liftedPct'), adhesiveSticks: sticks === undefined ? undefined : sticks === 'yes' };
  });
  return runOnRows(tapeLabelLiftCalculation, { specimens }, { list: 'specimens', rows: begun, first: 'liftedPct' });
}
