import { InputError } from '../calculation/input-error.ts';
import type { BenchReadings, Method } from '../method/method.ts';
import { numberIn } from '../method/sheet.ts';
import { filmConditions } from './film-conditions.ts';
import { fluidCautions } from './fluid-cautions.ts';
import { fluidFields, fluidLotField } from './fluid-fields.ts';
import { runOnBench } from '../method/run-on-bench.ts';
import { treatmentDecayCalculation } from './treatment-decay.calculation.ts';
import { treatmentFollowUp } from './treatment-follow-up.ts';

/** Wetting tension of stored film by test fluids on several days, and how long it stays above what printing needs. */
export const treatmentDecayMethod: Method = {
  id: 'treatment-decay',
  version: '1',
  title: 'Decay of the treatment in storage',
  shortTitle: 'Treatment decay',
  group: 'surface-energy',
  standards: ['ASTM D2578', 'ISO 8296'],
  help: {
    shows: 'How fast a treated film loses its wetting tension, after how many days it falls to the requirement, and by when to test it again.',
    how: [
      'Keep the film wound and wrapped as it is stored. Note the day of treatment: it is day 0.',
      'On each day of testing discard the outer windings, then find the highest fluid that holds and the lowest that retracts.',
      'Test often at first (days 0, 1, 2, 4, 7), then further apart (14, 21, 30, 60): most is lost in the first days.',
      'Use the same fluid set, side and place across the web throughout.',
    ],
    spoils: [
      'Film from another roll or another lot among the readings.',
      'Warm or damp storage: slip agents come to the surface sooner. The result holds for the storage that was tested.',
      'Fluids that drift with age look like a decay: check them on an untreated control film.',
    ],
  },
  cautions: fluidCautions,
  conditions: [
    { kind: 'number', key: 'requiredMNm', label: 'Required wetting tension', unit: 'mN/m', min: 18, max: 75, usual: { min: 34, max: 54 }, required: true },
    { kind: 'text', key: 'treatedOn', label: 'Treated on', maxLength: 10, format: 'date', hint: 'day 0, as 2026-03-09; Today then tells when to test again' },
    ...filmConditions,
    { kind: 'text', key: 'storage', label: 'Storage', maxLength: 200, hint: 'place, temperature, wrapping' },
    fluidLotField,
  ],
  readings: {
    rowName: 'reading',
    fields: [{ kind: 'number', key: 'days', label: 'Days since treatment', unit: 'd', min: 0, max: 3650, required: true }, ...fluidFields],
    startRows: 8,
    minRows: 3,
    maxRows: 1000,
  },
  calculation: 'treatment-decay',
  properties: [
    { key: 'daysUntilRequired', title: 'Days until the requirement', unit: 'd', better: 'higher', limited: true, headline: true },
    { key: 'testAgainBy', title: 'Test again by day', unit: 'd', better: 'none', limited: false, headline: true },
    { key: 'initial', title: 'Initial wetting tension', unit: 'mN/m', better: 'higher', limited: true, headline: false },
    { key: 'floor', title: 'Levels off at', unit: 'mN/m', better: 'higher', limited: true, headline: false },
    { key: 'rate', title: 'Rate of decay', unit: '', better: 'none', limited: false, headline: false },
    { key: 'scatter', title: 'Scatter of single readings', unit: 'mN/m', better: 'none', limited: false, headline: false },
  ],
  evaluate,
  followUp: treatmentFollowUp,
};

function evaluate(bench: BenchReadings) {
  const requiredMNm = numberIn(bench.conditions, 'requiredMNm');
  if (requiredMNm === undefined) {
    throw new InputError('conditions.requiredMNm', null, 'Enter the wetting tension that printing or laminating needs.');
  }
  const read = bench.rows
    .map((row, index) => ({ values: row.values, index }))
    .filter(({ values }) => numberIn(values, 'wetsMNm') !== undefined || numberIn(values, 'retractsMNm') !== undefined);
  const undated = read.find(({ values }) => numberIn(values, 'days') === undefined);
  if (undated) {
    throw new InputError(`rows[${undated.index}].days`, null, 'This reading has no day: enter the days since treatment.');
  }
  if (read.length < 3) {
    throw new InputError(`rows[${read.length}].days`, null, `A decay needs at least 3 readings; there ${read.length === 1 ? 'is 1' : `are ${read.length}`}.`);
  }
  const input = {
    requiredMNm,
    readings: read.map(({ values }) => ({
      days: numberIn(values, 'days'),
      wetsMNm: numberIn(values, 'wetsMNm'),
      retractsMNm: numberIn(values, 'retractsMNm'),
    })),
  };
  return runOnBench(treatmentDecayCalculation, input, (field) => {
    const reading = /^readings\[(\d+)\]\.(\w+)/.exec(field);
    if (reading) return `rows[${read[Number(reading[1])]!.index}].${reading[2]}`;
    return field === 'requiredMNm' ? 'conditions.requiredMNm' : '';
  });
}
