import { InputError } from '../calculation/input-error.ts';
import type { CalculationResult } from '../calculation/result.ts';
import type { BenchReadings, Method } from '../method/method.ts';
import { readRows } from '../method/read-rows.ts';
import { runOnRows } from '../method/run-on-rows.ts';
import { numberIn, textIn } from '../method/sheet.ts';
import { surfaceTackCalculation } from './surface-tack.calculation.ts';
import { TACK_WORDS, tackGrades } from './tack-grade.ts';

/** Tack of a printed surface by touch and cotton fibres, and when it is gone. */
export const surfaceTackMethod: Method = {
  id: 'surface-tack',
  version: '1',
  title: 'Surface tack',
  shortTitle: 'Surface tack',
  group: 'cure',
  standards: ['ASTM D1640'],
  help: {
    shows: 'Whether the surface is still sticky, and after how long it no longer is. A dry surface may lie over soft ink: it shows neither depth of cure nor conversion.',
    how: [
      'Drop loose cotton fibres on the print, wait ten seconds, tilt it and blow them off gently; then touch with a gloved finger.',
      'Choose 0 to 5 by the list, and state how long after printing or cure.',
      'For the time: look again at set times, each time at a fresh place. Type the last time at which it was tacky and the first at which it was not.',
      'If it was free of tack at the first look, leave the tacky time empty; if it never was, leave the free time empty.',
      'Three specimens or more, over solids and overprints.',
    ],
    spoils: [
      'A place that was touched before.',
      'Warm, damp or moving air: state the conditions.',
      'Static charge that holds fibres to a dry film: discharge it first, and try the bare film.',
      'Times far apart: the answer is no finer than the looks.',
    ],
  },
  cautions: [
    { hazard: 'toxic', text: 'A tacky print carries uncured ink or solvent, which may sensitise the skin: gloves, never a bare finger. The safety data sheet and local codes hold.' },
    { hazard: 'uv', text: 'Beside a running UV unit: no stray light on eyes or hands, interlocks in place. The maker’s instructions and local codes hold.' },
  ],
  conditions: [
    { kind: 'number', key: 'gradedAtMin', label: 'Graded after', unit: 'min', min: 0, max: 10_000_000, usual: { min: 0, max: 1500 } },
    { kind: 'number', key: 'temperatureC', label: 'Temperature', unit: '°C', min: -50, max: 200, usual: { min: 18, max: 30 } },
    { kind: 'number', key: 'relativeHumidityPct', label: 'Relative humidity', unit: '%', min: 0, max: 100, usual: { min: 30, max: 70 } },
  ],
  readings: {
    rowName: 'specimen',
    fields: [
      { kind: 'text', key: 'label', label: 'Place', maxLength: 100, hint: 'colour or place' },
      {
        kind: 'choice',
        key: 'grade',
        label: 'Grade',
        choices: tackGrades.map((grade) => ({ value: `${grade}`, label: `${grade}: ${TACK_WORDS[grade]}`, shortcut: `${grade}` })),
      },
      { kind: 'number', key: 'tackyAtMin', label: 'Last tacky at', unit: 'min', min: 0, max: 10_000_000 },
      { kind: 'number', key: 'freeAtMin', label: 'First free at', unit: 'min', min: 0, max: 10_000_000 },
    ],
    startRows: 3,
    minRows: 1,
    maxRows: 500,
  },
  calculation: 'surface-tack',
  properties: [
    { key: 'grade', title: 'Grade of tack', unit: '', better: 'lower', kind: 'grade', limited: true, headline: true, readingsFigure: 'tack-grades' },
    { key: 'tackFree', title: 'Tack-free time', unit: 'min', better: 'lower', limited: true, headline: true, readingsFigure: 'tack-free' },
    { key: 'worstGrade', title: 'Worst grade', unit: '', better: 'lower', kind: 'grade', limited: true, asRead: true, headline: false },
  ],
  evaluate,
};

function evaluate(bench: BenchReadings): CalculationResult {
  const begun = readRows(bench, ['grade', 'tackyAtMin', 'freeAtMin']);
  if (begun.length === 0) throw new InputError('rows[0].grade', null, 'No specimen has been looked at yet.');
  const specimens = begun.map(({ values, index }) => {
    const grade = textIn(values, 'grade');
    return { label: textIn(values, 'label') ?? `${index + 1}`, grade: grade === undefined ? undefined : Number(grade), tackyAtMin: numberIn(values, 'tackyAtMin'), freeAtMin: numberIn(values, 'freeAtMin') };
  });
  return runOnRows(surfaceTackCalculation, { specimens }, { list: 'specimens', rows: begun, first: 'grade' });
}
