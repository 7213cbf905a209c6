import { InputError } from '../calculation/input-error.ts';
import type { CalculationResult, Flag } from '../calculation/result.ts';
import { instrumentField } from '../method/instrument-field.ts';
import type { BenchReadings, Method } from '../method/method.ts';
import { readRows } from '../method/read-rows.ts';
import { runOnRows } from '../method/run-on-rows.ts';
import { limitOn, numberIn, textIn } from '../method/sheet.ts';
import { BLOCKING_WORDS, blockingGrades } from './blocking-grade.ts';
import { blockingLoadCalculation } from './blocking-load.calculation.ts';

/** Blocking of printed film, after a clamp or chamber or straight off the roll: graded by hand, by load, or both. */
export const blockingMethod: Method = {
  id: 'blocking',
  version: '1',
  title: 'Blocking',
  shortTitle: 'Blocking',
  group: 'mechanical',
  standards: ['ASTM D3354', 'ISO 11502'],
  help: {
    shows: 'How strongly layers cling to one another, and whether ink or coating goes over to the other side, after the stated pressure, temperature and time. It does not show what another pressure, warmth or time would do.',
    how: [
      'Cut the pairs of layers as they lie in the roll: print to back, or as the customer asks; say which faces meet.',
      'In a clamp or under weights in a chamber: press at the stated pressure, temperature and time; let the stack cool under pressure. Straight off the roll: take the pairs from the stated depth.',
      'Grade: peel each pair apart slowly by hand and choose 0 to 5 by the list; look at both faces under good light.',
      'Load: between parallel plates of 100 cm², raise the load by about 90 g a minute until the layers part; stop at 200 g and choose “no” if they have not.',
      'Five pairs or more, across the web and from the edges as well as the middle.',
    ],
    spoils: [
      'Pairs that were lifted or slid against each other before.',
      'Edges cut with a blunt blade: they hold the layers together.',
      'Pressure unlike over the area: a stack that is not flat, a clamp out of true.',
      'Damp air, static charge, or a print that was not dry when it was wound: state the hours since printing.',
    ],
  },
  cautions: [
    { hazard: 'heat', text: 'Plates and stacks from the chamber are hot and heavy: gloves, both hands, let them cool. Clamps and presses crush: the maker’s instructions and local codes hold.' },
    { hazard: 'solvent', text: 'Warm prints give off what solvent they hold: no solvent-wet prints in a chamber that is not made for them; ventilate. Safety data sheet and local codes hold.' },
  ],
  conditions: [
    {
      kind: 'choice',
      key: 'pressedBy',
      label: 'Blocked by',
      choices: [
        { value: 'clamp', label: 'Clamp or press', shortcut: 'c' },
        { value: 'chamber', label: 'Weights in a chamber', shortcut: 'w' },
        { value: 'roll', label: 'Straight off the roll', shortcut: 'r' },
      ],
      default: 'clamp',
      required: true,
    },
    {
      kind: 'choice',
      key: 'faces',
      label: 'Faces that meet',
      choices: [
        { value: 'print-back', label: 'Print to back', shortcut: 'b' },
        { value: 'print-print', label: 'Print to print', shortcut: 'p' },
        { value: 'back-back', label: 'Back to back', shortcut: 'k' },
        { value: 'other', label: 'Other', shortcut: 'o' },
      ],
      default: 'print-back',
    },
    { kind: 'number', key: 'pressureKPa', label: 'Pressure', unit: 'kPa', min: 0, minExclusive: true, max: 10_000, usual: { min: 3, max: 500 } },
    { kind: 'number', key: 'temperatureC', label: 'Temperature', unit: '°C', min: -50, max: 200, usual: { min: 20, max: 60 } },
    { kind: 'number', key: 'hours', label: 'Time under pressure', unit: 'h', min: 0, minExclusive: true, max: 100_000, usual: { min: 1, max: 168 } },
    { kind: 'number', key: 'relativeHumidityPct', label: 'Relative humidity', unit: '%', min: 0, max: 100 },
    { kind: 'number', key: 'areaCm2', label: 'Area pulled apart', unit: 'cm²', min: 0, minExclusive: true, max: 10_000, default: 100 },
    { kind: 'text', key: 'place', label: 'Place in the roll', maxLength: 100, hint: 'outer wraps, core, edge' },
    instrumentField,
  ],
  readings: {
    rowName: 'specimen',
    fields: [
      {
        kind: 'choice',
        key: 'grade',
        label: 'Grade',
        choices: blockingGrades.map((grade) => ({ value: `${grade}`, label: `${grade}: ${BLOCKING_WORDS[grade]}`, shortcut: `${grade}` })),
      },
      { kind: 'number', key: 'loadG', label: 'Load', unit: 'g', min: 0, max: 100_000, usual: { min: 0, max: 200 } },
      {
        kind: 'choice',
        key: 'separated',
        label: 'Parted by the load',
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
  calculation: 'blocking-load',
  properties: [
    { key: 'grade', title: 'Grade of blocking', unit: '', better: 'lower', kind: 'grade', limited: true, headline: true, readingsFigure: 'blocking-grades' },
    { key: 'worstGrade', title: 'Worst grade', unit: '', better: 'lower', kind: 'grade', limited: true, asRead: true, headline: false },
    { key: 'load', title: 'Blocking load', unit: 'g', better: 'lower', limited: true, headline: true, readingsFigure: 'loads' },
    { key: 'maximum', title: 'Highest load', unit: 'g', better: 'lower', limited: true, asRead: true, headline: false },
    { key: 'pressure', title: 'Blocking load per area', unit: 'Pa', better: 'lower', limited: true, headline: false },
  ],
  evaluate,
};

function evaluate(bench: BenchReadings): CalculationResult {
  const begun = readRows(bench, ['grade', 'loadG', 'separated']);
  if (begun.length === 0) throw new InputError('rows[0].grade', null, 'No specimen has a grade or a load yet.');
  const specimens = begun.map(({ values }) => {
    const grade = textIn(values, 'grade');
    return { loadG: numberIn(values, 'loadG'), separated: textIn(values, 'separated') !== 'no', grade: grade === undefined ? undefined : Number(grade) };
  });
  const upper = limitOn(bench, 'load')?.upper ?? limitOn(bench, 'maximum')?.upper ?? undefined;
  const input = { specimens, areaCm2: numberIn(bench.conditions, 'areaCm2'), limitG: upper !== undefined && upper > 0 ? upper : undefined };
  const result = runOnRows(blockingLoadCalculation, input, { list: 'specimens', rows: begun, first: 'grade', conditions: ['areaCm2'] });
  return { ...result, flags: [...unstated(bench), ...result.flags] };
}

/** Blocking without its pressure, warmth and time cannot be compared with anything. */
function unstated({ conditions }: BenchReadings): Flag[] {
  if (textIn(conditions, 'pressedBy') === 'roll') return [];
  const missing = [['pressureKPa', 'pressure'], ['temperatureC', 'temperature'], ['hours', 'time']].filter(([key]) => numberIn(conditions, key!) === undefined);
  if (missing.length === 0) return [];
  return [{ code: 'conditions-unstated', where: `conditions.${missing[0]![0]}`, text: `The ${missing.map(([, word]) => word).join(' and ')} of the blocking is not stated: the result compares with no other.` }];
}
