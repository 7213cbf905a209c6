import { InputError } from '../calculation/input-error.ts';
import type { BenchReadings, Method } from '../method/method.ts';
import { runOnBench } from '../method/run-on-bench.ts';
import { limitOn, numberIn, textIn } from '../method/sheet.ts';
import { daysSinceTreatment, filmConditions } from './film-conditions.ts';
import { fluidCautions } from './fluid-cautions.ts';
import { fluidFields, fluidLotField } from './fluid-fields.ts';
import { wettingFluidCalculation } from './wetting-fluid.calculation.ts';

/** Wetting tension by test fluids at positions across the web (ASTM D2578, ISO 8296). */
export const testFluidsMethod: Method = {
  id: 'test-fluids',
  version: '1',
  title: 'Wetting tension with test fluids across the web',
  shortTitle: 'Test fluids',
  group: 'surface-energy',
  standards: ['ASTM D2578', 'ISO 8296'],
  help: {
    shows:
      'How well a film will be wetted by an ink or an adhesive, and whether its treatment is even across the web. The fluids only ' +
      'bracket the wetting tension; the mean, its interval and the weakest position follow from all brackets together.',
    how: [
      'Condition the film at 23 ± 2 °C and 50 ± 5 % relative humidity. Mark positions across the whole web, the edges included.',
      'Wet a clean swab with a low fluid and spread it lightly over about 6.5 cm² in one stroke. Start the watch.',
      'The film of fluid stays whole for 2 s or longer: it holds. Go on with the next higher fluid, a new swab and a fresh place.',
      'The film of fluid breaks into drops within 2 s: it retracts. Note the highest fluid that held and the lowest that retracted.',
      'Reached a result going down? Confirm it going up.',
      'Nothing retracted, or nothing held: leave that cell empty. The position then counts as a bound, not as a value.',
    ],
    spoils: [
      'A swab used twice, or dipped back into the bottle: it carries slip agent and water into the fluid.',
      'Fluids past their date, open for long, or never checked: they drift by evaporation and moisture.',
      'Touching, rubbing or folding the place to be tested.',
      'Too much fluid: it holds by its mass. Too little: it dries within the 2 s.',
      'Film warmer or colder than the room.',
    ],
  },
  cautions: fluidCautions,
  conditions: [
    ...filmConditions,
    daysSinceTreatment,
    { kind: 'number', key: 'criterionS', label: 'Holds from', unit: 's', min: 0.1, max: 60, default: 2, usual: { min: 2, max: 2 }, required: true },
    fluidLotField,
  ],
  readings: {
    rowName: 'position',
    fields: [
      { kind: 'text', key: 'label', label: 'Position', maxLength: 100, hint: 'edge, centre, lane 3 …' },
      { kind: 'number', key: 'acrossMm', label: 'Across', unit: 'mm', min: 0, max: 20_000, hint: 'from the operator side' },
      ...fluidFields,
    ],
    startRows: 10,
    minRows: 1,
    maxRows: 1000,
  },
  calculation: 'wetting-fluid',
  properties: [
    { key: 'wettingTension', title: 'Wetting tension', unit: 'mN/m', better: 'higher', limited: true, belowHighEnd: true, headline: true, readingsFigure: 'brackets' },
    { key: 'weakestPosition', title: 'Weakest position', unit: 'mN/m', better: 'higher', limited: true, belowHighEnd: true, headline: true },
    { key: 'spread', title: 'Spread over the web', unit: 'mN/m', better: 'lower', limited: true, headline: false },
    { key: 'shareMeetingRequirement', title: 'Share of positions that meet', unit: '', better: 'higher', limited: true, headline: false },
    { key: 'reported', title: 'As reported by ASTM D2578', unit: 'mN/m', better: 'higher', limited: false, headline: false },
  ],
  evaluate,
};

function evaluate(bench: BenchReadings) {
  const read = bench.rows
    .map((row, index) => ({ values: row.values, index }))
    .filter(({ values }) => numberIn(values, 'wetsMNm') !== undefined || numberIn(values, 'retractsMNm') !== undefined);
  if (read.length === 0) {
    throw new InputError('rows[0].wetsMNm', null, 'No position has a reading yet: enter the highest fluid that held or the lowest that retracted.');
  }
  const input = {
    positions: read.map(({ values, index }) => ({
      label: textIn(values, 'label') ?? `Position ${index + 1}`,
      acrossMm: numberIn(values, 'acrossMm'),
      wetsMNm: numberIn(values, 'wetsMNm'),
      retractsMNm: numberIn(values, 'retractsMNm'),
    })),
    criterionS: numberIn(bench.conditions, 'criterionS') ?? 2,
    requiredMNm: limitOn(bench, 'wettingTension')?.lower ?? undefined,
    temperatureC: numberIn(bench.conditions, 'temperatureC'),
    relativeHumidityPct: numberIn(bench.conditions, 'relativeHumidityPct'),
  };
  return runOnBench(wettingFluidCalculation, input, (field) => {
    const position = /^positions\[(\d+)\]\.(\w+)/.exec(field);
    if (position) return `rows[${read[Number(position[1])]!.index}].${position[2]}`;
    return field === 'requiredMNm' ? '' : `conditions.${field}`;
  });
}
