import { runCalculation } from '../calculation/calculation.ts';
import { InputError } from '../calculation/input-error.ts';
import type { CalculationResult } from '../calculation/result.ts';
import { instrumentField } from '../method/instrument-field.ts';
import type { BenchReadings, BenchRow, Method } from '../method/method.ts';
import { numberIn } from '../method/sheet.ts';
import { modeOf, widthFlag, widthOf } from './bench-strip.ts';
import { bondBuildCalculation } from './bond-build.calculation.ts';
import { buildFollowUp } from './build-follow-up.ts';
import { MODE_CHOICES } from './mode-choices.ts';
import { strengthOf } from './strength.ts';

const UNIT = 'N/15 mm';

/** Bond build-up: strips of one laminate peeled at several times after lamination. */
export const bondBuildMethod: Method = {
  id: 'bond-build',
  version: '1',
  title: 'Bond build-up after lamination',
  shortTitle: 'Bond build-up',
  group: 'bond-strength',
  standards: ['ASTM F904', 'DIN 55543-5'],
  help: {
    shows: 'How the bond of a laminate grows while its adhesive cures, the plateau it tends to, and after how many hours it is strong enough to slit or convert.',
    how: [
      'Take one length of laminate from the roll and store it as the roll is stored.',
      'Peel two or three strips soon after lamination, then at times that double: 1, 2, 4, 8, 24, 48 hours and on until the bond no longer changes.',
      'Keep width, speed and geometry the same each time; note the failure mode of each strip.',
      'Where the film tears before the bond gives way, choose that mode: the force counts as a lower bound.',
    ],
    spoils: [
      'A laminate stored warmer or drier than the roll.',
      'No readings near the plateau: then the plateau is a guess beyond the readings.',
      'Times counted from something else than lamination.',
    ],
  },
  cautions: [
    { hazard: 'blade', text: 'Strips are cut with bare blades: cut away from the hand, keep the guard on, follow the shop’s rules for blades.' },
    { hazard: 'solvent', text: 'Uncured adhesive may sensitise skin and airways: wear gloves, ventilate, heed its safety data sheet and local codes.' },
  ],
  conditions: [
    { kind: 'number', key: 'requiredNPer15mm', label: 'Strength to reach', unit: UNIT, min: 0, minExclusive: true, max: 100, hint: 'The hours until this strength are worked out.' },
    { kind: 'text', key: 'laminatedOn', label: 'Laminated on', maxLength: 10, format: 'date', hint: 'as 2026-03-09; Today then tells when the bond should be strong enough' },
    { kind: 'number', key: 'stripWidthMm', label: 'Strip width', unit: 'mm', min: 0, minExclusive: true, max: 200, default: 15, usual: { min: 10, max: 26 } },
    { kind: 'number', key: 'speedMmPerMin', label: 'Speed of the grips', unit: 'mm/min', min: 0, minExclusive: true, max: 5000, usual: { min: 50, max: 300 } },
    { kind: 'number', key: 'storageTemperatureC', label: 'Storage temperature', unit: '°C', min: -50, max: 150, usual: { min: 18, max: 50 } },
    instrumentField,
  ],
  readings: {
    rowName: 'reading',
    fields: [
      { kind: 'number', key: 'hours', label: 'Since lamination', unit: 'h', min: 0, max: 100_000, required: true, carryDown: true },
      { kind: 'number', key: 'forceN', label: 'Mean force', unit: 'N', min: 0, max: 1000, required: true },
      { kind: 'number', key: 'widthMm', label: 'Width', unit: 'mm', min: 0, minExclusive: true, max: 200, carryDown: true, hint: 'Empty: the strip width stated above.' },
      { kind: 'choice', key: 'mode', label: 'Failure', required: true, choices: MODE_CHOICES, carryDown: true },
    ],
    startRows: 8,
    minRows: 4,
    maxRows: 200,
  },
  calculation: 'bond-build',
  properties: [
    { key: 'plateau', title: 'Plateau of the bond', unit: UNIT, better: 'higher', limited: true, headline: true },
    { key: 'hoursUntilRequired', title: 'Hours until the strength to reach', unit: 'h', better: 'lower', limited: true, headline: true },
    { key: 'initial', title: 'Bond at lamination', unit: UNIT, better: 'higher', limited: true, headline: false },
    { key: 'rate', title: 'Rate of build-up', unit: '1/h', better: 'none', limited: false, headline: false },
  ],
  evaluate,
  followUp: buildFollowUp,
};

function evaluate(bench: BenchReadings): CalculationResult {
  const begun = bench.rows.map((row, index) => ({ row, index })).filter(({ row }) => isBegun(row));
  const readings = begun.map(({ row: { values }, index }) => ({
    hours: needed(values, 'hours', index, 'the hours since lamination'),
    strengthNPer15mm: strengthOf(needed(values, 'forceN', index, 'a force'), widthOf(bench, values, index), UNIT),
    mode: modeOf(values, index),
  }));
  if (readings.length < 4) {
    throw new InputError(`rows[${bench.rows.length}].forceN`, readings.length, `A build-up curve needs at least 4 readings; there are ${readings.length}.`);
  }
  const result = runCalculation(bondBuildCalculation, { readings, requiredNPer15mm: numberIn(bench.conditions, 'requiredNPer15mm') });
  const flags = result.flags.map((flag) => (flag.where === 'requiredNPer15mm' ? { ...flag, where: 'conditions.requiredNPer15mm' } : flag));
  return { ...result, flags: [...widthFlag(bench, isBegun), ...flags] };
}

/** Hours, width and mode alone, carried down from the row above, begin no reading. */
function isBegun({ values }: BenchRow): boolean {
  return values.forceN != null;
}

function needed(values: BenchRow['values'], key: 'hours' | 'forceN', index: number, what: string): number {
  const value = numberIn(values, key);
  if (value === undefined) throw new InputError(`rows[${index}].${key}`, null, `Reading ${index + 1} lacks ${what}.`);
  if (value < 0) throw new InputError(`rows[${index}].${key}`, value, `In reading ${index + 1} ${what} cannot be below zero, but is ${value}.`);
  return value;
}
