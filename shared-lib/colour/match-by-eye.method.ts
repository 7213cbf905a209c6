import { InputError } from '../calculation/input-error.ts';
import type { BenchReadings, Method, NumberField } from '../method/method.ts';
import { runOnBench } from '../method/run-on-bench.ts';
import { numberIn, textIn } from '../method/sheet.ts';
import { matchGrades } from './grade-of-match.ts';
import { matchByEyeCalculation } from './match-by-eye.calculation.ts';

const grade = (key: string, label: string, required: boolean): NumberField => ({
  kind: 'number',
  key,
  label,
  min: 1,
  max: 5,
  steps: [...matchGrades],
  required,
  hint: '5 no difference … 1 very great; 4.5 for 4-5',
});

/** A print judged beside its reference under a stated light, by one observer or two. */
export const matchByEyeMethod: Method = {
  id: 'match-by-eye',
  version: '1',
  title: 'Match by eye against a reference',
  shortTitle: 'Match by eye',
  group: 'colour',
  standards: ['ISO 3664', 'ISO 105-A02'],
  help: {
    shows: 'Whether a print looks like its reference under a stated light, as a buyer would see it, and whether two observers see the same.',
    how: [
      'Let the booth warm up; dim the room and keep bright colours, clothes included, out of sight.',
      'Lay print and reference edge to edge on the same neutral background, over the same backing; change their sides once.',
      'Grade the difference with the grey scale beside them: 5 none, 4 slight, 3 clear, 2 great, 1 very great; halves between.',
      'Say which way the print differs: darker, redder, duller …',
      'Have a second observer grade the same patches without seeing the first grades.',
      'Look again under a second light: a new test, so that each grade keeps its light.',
    ],
    spoils: [
      'Another light than the agreed one, lamps past their hours, a booth that has not warmed up.',
      'A coloured or shiny background, a gap between the two, films over different backings.',
      'Tired eyes: rest on grey for a minute after strong colours. Colour vision that was never tested.',
      'Films or inks that fluoresce: they match only under the same UV.',
    ],
  },
  cautions: [{ hazard: 'uv', text: 'A booth may have a UV lamp: do not look into it and switch it off when it is not needed. The maker’s instructions and local codes hold.' }],
  conditions: [
    { kind: 'text', key: 'reference', label: 'Reference', maxLength: 200, required: true, hint: 'name and date of the standard' },
    {
      kind: 'choice',
      key: 'light',
      label: 'Light',
      required: true,
      default: 'D50',
      choices: [
        { value: 'D50', label: 'D50 booth', shortcut: '5' },
        { value: 'D65', label: 'D65 booth', shortcut: '6' },
        { value: 'A', label: 'A, filament lamp', shortcut: 'a' },
        { value: 'F11', label: 'F11, three-band store lamp', shortcut: 'f' },
        { value: 'F2', label: 'F2, cool white', shortcut: 'c' },
        { value: 'window', label: 'north window', shortcut: 'w' },
      ],
    },
    { kind: 'number', key: 'illuminanceLx', label: 'Illuminance', unit: 'lx', min: 10, max: 100_000, usual: { min: 375, max: 2500 } },
    {
      kind: 'choice',
      key: 'background',
      label: 'Background',
      required: true,
      default: 'grey',
      choices: [
        { value: 'grey', label: 'neutral grey', shortcut: 'g' },
        { value: 'white', label: 'white', shortcut: 'w' },
        { value: 'black', label: 'black', shortcut: 'b' },
        { value: 'product', label: 'the product', shortcut: 'p' },
      ],
    },
    { kind: 'text', key: 'observer', label: 'Observer', maxLength: 100, required: true, hint: 'colour vision tested?' },
    { kind: 'text', key: 'secondObserver', label: 'Second observer', maxLength: 100 },
  ],
  readings: {
    rowName: 'patch',
    fields: [
      { kind: 'text', key: 'label', label: 'Patch', maxLength: 100, hint: 'colour or place' },
      grade('grade', 'Grade', true),
      grade('secondGrade', 'Second observer', false),
      { kind: 'text', key: 'difference', label: 'The print is', maxLength: 200, hint: 'darker, redder, duller …' },
    ],
    startRows: 4,
    minRows: 1,
    maxRows: 500,
  },
  calculation: 'match-by-eye',
  properties: [
    { key: 'grade', title: 'Grade of match', unit: '', better: 'higher', kind: 'grade', scale: { low: 1, high: 5 }, limited: true, headline: true, readingsFigure: 'grades' },
    { key: 'worst', title: 'Worst grade', unit: '', better: 'higher', kind: 'grade', scale: { low: 1, high: 5 }, limited: true, asRead: true, headline: true },
    { key: 'withinHalfGradePct', title: 'Observers within half a grade', unit: '%', better: 'higher', limited: true, headline: false },
    { key: 'agreementPct', title: 'Observers alike', unit: '%', better: 'higher', limited: true, headline: false },
  ],
  evaluate,
};

function evaluate(bench: BenchReadings) {
  const read = bench.rows.map(({ values }, index) => ({ values, index })).filter(({ values }) => numberIn(values, 'grade') !== undefined || numberIn(values, 'secondGrade') !== undefined);
  if (read.length === 0) throw new InputError('rows[0].grade', null, 'No patch has a grade yet.');
  if (read.some(({ values }) => numberIn(values, 'secondGrade') !== undefined) && textIn(bench.conditions, 'secondObserver') === undefined) {
    throw new InputError('conditions.secondObserver', null, 'Say who the second observer is.');
  }
  const comparisons = read.map(({ values }) => ({
    label: textIn(values, 'label'),
    grade: numberIn(values, 'grade'),
    secondGrade: numberIn(values, 'secondGrade'),
    difference: textIn(values, 'difference'),
  }));
  return runOnBench(matchByEyeCalculation, { comparisons }, (field) => {
    const cell = /^comparisons\[(\d+)\](?:\.(\w+))?/.exec(field);
    return cell ? `rows[${read[Number(cell[1])]!.index}].${cell[2] ?? 'grade'}` : '';
  });
}
