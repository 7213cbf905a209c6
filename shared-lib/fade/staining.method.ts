import { InputError } from '../calculation/input-error.ts';
import type { Lab } from '../colour/lab.ts';
import { instrumentField } from '../method/instrument-field.ts';
import type { BenchReadings, Method } from '../method/method.ts';
import { runOnBench } from '../method/run-on-bench.ts';
import { numberIn } from '../method/sheet.ts';
import { stainingCalculation } from './staining.calculation.ts';

const WHITE = ['whiteL', 'whiteA', 'whiteB'];
const STAINED = ['L', 'a', 'b'];

/** What a print gives off to a white that it was rubbed or pressed against, by the grey scale for staining. */
export const stainingMethod: Method = {
  id: 'staining',
  version: '1',
  title: 'Staining of a white, by the grey scale',
  shortTitle: 'Staining',
  group: 'fade',
  standards: ['ISO 105-A03', 'ISO 105-A04'],
  help: {
    shows: 'How deeply a white cloth, paper or film is stained by ink that came off a print in a rub, in a stack or under water, as the grade that an eye would give with the grey scale. It shows what arrived on the white, not what the print lost, and says nothing of substances without colour.',
    how: [
      'Read the white in the place that is to be stained, or a clean piece of it: L*, a*, b* under D65 for the 10° observer unless otherwise agreed.',
      'Rub, press or soak as the test asks; state it. Let a wet white dry in the air, flat and in the dark.',
      'Read the stain at its deepest, over the same backing; three whites or more, each used once.',
      'The white typed in one row is offered in the next.',
    ],
    spoils: [
      'A white that is not white (L* below 70): take the grey scale for change.',
      'Whites with optical brightener under another light or UV filter before and after.',
      'A thin cloth or film over another backing; grit or ink dust that is not stain.',
      'A smear at the edge read for the whole.',
    ],
  },
  cautions: [
    { hazard: 'solvent', text: 'A white wetted with anything but water: little of it, with ventilation and gloves, away from flames; its safety data sheet and local codes hold.' },
    { hazard: 'food-contact', text: 'A clean white does not show that nothing migrates: whether a print may touch food is decided by the food-contact law of the place and a licensed laboratory.' },
  ],
  conditions: [
    {
      kind: 'choice',
      key: 'cause',
      label: 'Stained by',
      choices: [
        { value: 'dry-rub', label: 'dry rub', shortcut: 'd' },
        { value: 'wet-rub', label: 'wet rub', shortcut: 'w' },
        { value: 'pressure', label: 'pressure, set-off', shortcut: 'p' },
        { value: 'bleeding', label: 'bleeding in a liquid', shortcut: 'b' },
      ],
      default: 'dry-rub',
      required: true,
    },
    { kind: 'text', key: 'white', label: 'White', maxLength: 100, hint: 'cloth, paper or film; its lot' },
    { kind: 'text', key: 'treatment', label: 'Done', maxLength: 200, hint: 'strokes and load; pressure, hours and °C; liquid' },
    { kind: 'text', key: 'backing', label: 'Backing', maxLength: 60 },
    instrumentField,
  ],
  readings: {
    rowName: 'white',
    fields: [
      { kind: 'text', key: 'label', label: 'Colour or place', maxLength: 100 },
      { kind: 'number', key: 'whiteL', label: 'White L*', min: 0, max: 150, usual: { min: 70, max: 100 }, carryDown: true },
      { kind: 'number', key: 'whiteA', label: 'White a*', min: -300, max: 300, usual: { min: -10, max: 10 }, carryDown: true },
      { kind: 'number', key: 'whiteB', label: 'White b*', min: -300, max: 300, usual: { min: -20, max: 20 }, carryDown: true },
      { kind: 'number', key: 'L', label: 'Stained L*', min: 0, max: 150, usual: { min: 0, max: 100 }, required: true },
      { kind: 'number', key: 'a', label: 'Stained a*', min: -300, max: 300, usual: { min: -100, max: 110 }, required: true },
      { kind: 'number', key: 'b', label: 'Stained b*', min: -300, max: 300, usual: { min: -100, max: 120 }, required: true },
    ],
    startRows: 3,
    minRows: 1,
    maxRows: 500,
  },
  calculation: 'staining',
  properties: [
    { key: 'grade', title: 'Grade of staining', unit: '', better: 'higher', kind: 'grade', scale: { low: 1, high: 5 }, limited: true, headline: true },
    { key: 'deltaEGS', title: 'Difference by the grey scale, ΔE GS', unit: '', better: 'lower', limited: true, headline: true, readingsFigure: 'staining-readings' },
  ],
  evaluate,
};

function evaluate(bench: BenchReadings) {
  const read = bench.rows.map(({ values }, index) => ({ values, index })).filter(({ values }) => STAINED.every((key) => numberIn(values, key) !== undefined));
  if (read.length === 0) throw new InputError('rows[0].L', null, 'No stained white has been read yet.');
  const colours = (keys: string[]) => read.map(({ values, index }) => keys.map((key) => numberIn(values, key) ?? missing(index, key)) as unknown as Lab);
  return runOnBench(stainingCalculation, { before: colours(WHITE), after: colours(STAINED) }, (field) => {
    const [, which, place, part] = /^(before|after)\[(\d+)\](?:\[(\d)\])?/.exec(field) ?? [];
    return which === undefined ? '' : `rows[${read[Number(place)]!.index}].${(which === 'before' ? WHITE : STAINED)[Number(part ?? 0)]!}`;
  });
}

function missing(index: number, key: string): never {
  throw new InputError(`rows[${index}].${key}`, null, 'Enter L*, a* and b* of the white before it was stained.');
}
