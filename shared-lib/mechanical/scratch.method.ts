import { InputError } from '../calculation/input-error.ts';
import { instrumentField } from '../method/instrument-field.ts';
import type { BenchReadings, Method, NumberField } from '../method/method.ts';
import { readRows, type ReadRow } from '../method/read-rows.ts';
import { runOnRows } from '../method/run-on-rows.ts';
import { numberIn, textIn } from '../method/sheet.ts';
import { gradeField } from './grade-field.ts';
import { hoursSincePrinting, roomConditions } from './room-conditions.ts';
import { scratchCalculation } from './scratch.calculation.ts';

const load = (key: string, label: string, hint: string): NumberField => ({ kind: 'number', key, label, unit: 'N', min: 0, minExclusive: true, max: 1000, usual: { min: 0.1, max: 20 }, hint });
const READ = ['grade', 'heldN', 'scratchedN'];

/** A print scratched by fingernail or by a stylus under rising loads. */
export const scratchMethod: Method = {
  id: 'scratch',
  version: '1',
  title: 'Scratch of the print by fingernail or stylus',
  shortTitle: 'Scratch',
  group: 'mechanical',
  standards: ['ISO 1518-1', 'ISO 1518-2'],
  help: {
    shows: 'How well a print or varnish withstands a hard edge: by fingernail as a grade, under a loaded stylus as the load at which the first scratch is seen.',
    how: [
      'Lay the film on a flat hard base and hold it so that it cannot slip or stretch. Print up.',
      'Fingernail: draw the back of the nail across the print three times with even pressure, away from the scratch before.',
      'Stylus: begin well below the load expected, draw one stroke, look at it, take the next load on a fresh place. Go on until a scratch is seen or the loads end.',
      'Enter the highest load without a scratch and the first with one. No load scratched it: leave the second cell empty.',
      'Grade: 5 no mark, 4 a mark in the gloss only, 3 a faint scratch in the ink, 2 a clear scratch, 1 ink removed in part, 0 film bare.',
      'Three specimens or more, along and across the web.',
    ],
    spoils: ['A worn or dirty tip, another radius.', 'A soft base: the film dents instead.', 'Strokes over each other, or another speed.', 'Varnish or wax that has not come to the surface yet: test at a stated age.', 'Fingernails differ: grades of two people are not alike without a measurement study.'],
  },
  cautions: [{ hazard: 'blade', text: 'Styluses and scratch tips are sharp: guard the tip, keep fingers out of its way, follow the shop’s rules for blades.' }],
  conditions: [
    {
      kind: 'choice',
      key: 'tool',
      label: 'Tool',
      required: true,
      default: 'fingernail',
      choices: [
        { value: 'fingernail', label: 'fingernail', shortcut: 'f' },
        { value: 'stylus', label: 'stylus with load', shortcut: 's' },
      ],
    },
    { kind: 'number', key: 'tipRadiusMm', label: 'Tip radius', unit: 'mm', min: 0, minExclusive: true, max: 50, usual: { min: 0.2, max: 2 } },
    { kind: 'number', key: 'speedMmPerS', label: 'Speed', unit: 'mm/s', min: 0, minExclusive: true, max: 1000, usual: { min: 10, max: 50 } },
    hoursSincePrinting,
    { kind: 'text', key: 'observer', label: 'Scratched by', maxLength: 100 },
    ...roomConditions,
    instrumentField,
  ],
  readings: {
    rowName: 'specimen',
    fields: [
      { kind: 'text', key: 'label', label: 'Place', maxLength: 100, hint: 'colour, direction' },
      gradeField(false, '5 no mark … 0 film bare'),
      load('heldN', 'No scratch at', 'The highest load that left none.'),
      load('scratchedN', 'Scratch at', 'The first load that left one; empty: none did.'),
    ],
    startRows: 3,
    minRows: 1,
    maxRows: 200,
  },
  calculation: 'scratch',
  properties: [
    { key: 'grade', title: 'Grade of the scratch', unit: '', better: 'higher', kind: 'grade', limited: true, headline: true, readingsFigure: 'grades' },
    { key: 'load', title: 'Load at the first scratch', unit: 'N', better: 'higher', limited: true, headline: true, readingsFigure: 'loads' },
    { key: 'weakest', title: 'Weakest specimen', unit: 'N', better: 'higher', limited: true, headline: false },
  ],
  evaluate,
};

function evaluate(bench: BenchReadings) {
  const read = readRows(bench, READ);
  if (read.length === 0) throw new InputError('rows[0].grade', null, 'No specimen has a grade or a load yet.');
  if (textIn(bench.conditions, 'tool') !== 'stylus') refuseLoads(read);
  const specimens = read.map(({ values, index }) => ({ label: textIn(values, 'label') ?? `${index + 1}`, grade: numberIn(values, 'grade'), heldN: numberIn(values, 'heldN'), scratchedN: numberIn(values, 'scratchedN') }));
  return runOnRows(scratchCalculation, { specimens }, { list: 'specimens', rows: read, first: 'grade' });
}

/** A fingernail has no load; one typed beside it belongs to another test. */
function refuseLoads(read: readonly ReadRow[]): void {
  const odd = read.find(({ values }) => values.heldN != null || values.scratchedN != null);
  if (odd) {
    const key = odd.values.heldN != null ? 'heldN' : 'scratchedN';
    throw new InputError(`rows[${odd.index}].${key}`, odd.values[key], 'A fingernail has no load: choose the stylus above, or clear the load.');
  }
}
