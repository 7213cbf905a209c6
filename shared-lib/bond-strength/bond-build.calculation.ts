import { z } from 'zod';
import { defineCalculation } from '../calculation/calculation.ts';
import type { TableColumn } from '../calculation/table-column.ts';
import { InputError } from '../calculation/input-error.ts';
import type { Flag, ResultValue, TableRow } from '../calculation/result.ts';
import { formatNumber } from '../quantity/format.ts';
import { studentTQuantile } from '../statistics/distributions.ts';
import { profileInterval } from '../statistics/profile-interval.ts';
import { buildFigure } from './build-figure.ts';
import { BUILD_MODELS, fitBuild, hoursAt, type BuildModel, type FittedBuild } from './build-models.ts';
import type { CurveReading } from './censored-curve.ts';
import { FAILURE_MODES, isLowerBound } from './failure-mode.ts';
import { readStrength, strengthFields } from './strength-input.ts';

const LEVEL = 0.95;

const input = z.strictObject({
  readings: z.array(z.strictObject({ hours: z.number().min(0), ...strengthFields, mode: z.enum(FAILURE_MODES).optional() })).min(4).max(1000),
  requiredNPer15mm: z.number().positive().optional(),
});

const columns: TableColumn[] = [
  { key: 'model', title: 'Model' },
  { key: 'aicc', title: 'AICc' },
  { key: 'chosen', title: 'Chosen' },
  { key: 'residualSd', title: 'Scatter about the curve', unit: 'N/15 mm' },
  { key: 'initial', title: 'Initial', unit: 'N/15 mm' },
  { key: 'plateau', title: 'Plateau', unit: 'N/15 mm' },
  { key: 'rate', title: 'Rate', unit: '1/h' },
  { key: 'lag', title: 'Lag', unit: 'h' },
];

/** How the bond of a laminate builds up after lamination, and when it reaches what is required. */
export const bondBuildCalculation = defineCalculation({
  id: 'bond-build',
  version: '1',
  title: 'Bond build-up',
  input,
  compute: ({ readings: given, requiredNPer15mm }) => {
    const readings = given.map((reading, index): CurveReading => ({
      x: reading.hours,
      y: readStrength(reading, `readings[${index}]`, `Reading ${index + 1}`),
      lowerBound: reading.mode !== undefined && isLowerBound(reading.mode),
    }));
    checkReadings(readings);
    const fits = modelsFor(readings).map((model) => fitBuild(model, readings));
    const chosen = best(fits);
    const reached = hoursUntil(chosen, readings, requiredNPer15mm);
    return {
      results: { ...parameterResults(chosen, readings.length), hoursUntilRequired: reached.result },
      table: fits.map((fit) => tableRow(fit, fit === chosen)),
      flags: [...flags(chosen, readings), ...reached.flags],
      notes: [choiceNote(chosen, fits, readings), ...reached.notes],
      figures: [buildFigure(chosen, readings, requiredNPer15mm, reached.result.bound === 'exact' ? reached.result.value : null)],
    };
  },
  columns,
  cautions: [],
  sources: [
    'First-order approach to a plateau, with and without a lag: common practice for the cure of laminating adhesives',
    'Choice of the model: C. M. Hurvich, C.-L. Tsai, Biometrika 76 (1989) 297',
    'Interval of the hours by the profile of the sum of squares: D. M. Bates, D. G. Watts, Nonlinear Regression Analysis and Its Applications (1988)',
    'Lower bounds by maximum likelihood: W. Q. Meeker, L. A. Escobar, Statistical Methods for Reliability Data (1998)',
  ],
});

function checkReadings(readings: CurveReading[]): void {
  const failed = readings.filter(({ lowerBound }) => !lowerBound);
  const hours = new Set(failed.map(({ x }) => x)).size;
  if (hours < 3) {
    throw new InputError('readings', hours, `A build-up curve needs bonds that failed before their film at 3 different times at least; these readings have ${hours}.`);
  }
  if (Math.max(...readings.map(({ y }) => y)) === 0) throw new InputError('readings', 0, 'Every strength is zero: there is no build-up to fit.');
}

/** The lag is a fourth parameter: only where the readings are at four times or more, and number five at least. */
function modelsFor(readings: CurveReading[]): BuildModel[] {
  const hours = new Set(readings.filter(({ lowerBound }) => !lowerBound).map(({ x }) => x)).size;
  return BUILD_MODELS.filter(({ parameters }) => parameters.length <= hours && parameters.length < readings.length);
}

/** The smallest AICc; a model for which there are too few readings to have one comes last, the simpler first. */
function best(fits: FittedBuild[]): FittedBuild {
  return fits.reduce((so, other) => ((other.curve.aicc ?? Infinity) < (so.curve.aicc ?? Infinity) ? other : so));
}

function parameterResults({ model, curve: { fit } }: FittedBuild, n: number): Record<string, ResultValue> {
  const t = fit.degreesOfFreedom > 0 ? studentTQuantile((1 + LEVEL) / 2, fit.degreesOfFreedom) : 0;
  const entries = model.parameters.map((name, index): [string, ResultValue] => {
    const value = fit.parameters[index]!;
    const error = fit.standardErrors[index] ?? null;
    const reach = error === null ? null : t * error;
    const unit = name === 'rate' ? '1/h' : name === 'lag' ? 'h' : 'N/15 mm';
    return [name, { value, unit, low: reach === null ? null : Math.max(0, value - reach), high: reach === null ? null : value + reach, level: reach === null ? null : LEVEL, n, bound: 'exact' }];
  });
  return Object.fromEntries(entries);
}

function tableRow({ model, curve }: FittedBuild, chosen: boolean): TableRow {
  const parameters = Object.fromEntries(model.parameters.map((name, index) => [name, curve.fit.parameters[index]!]));
  return { model: model.name, aicc: curve.aicc, chosen, residualSd: curve.fit.residualSd, lag: null, ...parameters };
}

function hoursUntil({ model, curve }: FittedBuild, readings: CurveReading[], required: number | undefined): { result: ResultValue; flags: Flag[]; notes: string[] } {
  const n = readings.length;
  const none: ResultValue = { value: null, unit: 'h', low: null, high: null, level: null, n, bound: 'exact' };
  if (required === undefined) return { result: none, flags: [], notes: ['No requirement was given, so there are no hours until it.'] };
  const value = hoursAt(required, curve.fit.parameters);
  const longest = Math.max(...readings.map(({ x }) => x));
  const asked = `${formatNumber(required, 2)} N/15 mm`;
  if (value === null) {
    return {
      result: { ...none, value: longest, low: longest, bound: 'at-least' },
      flags: [{ code: 'not-reached', where: 'requiredNPer15mm', text: `The curve levels off at ${formatNumber(curve.fit.parameters[1]!, 2)} N/15 mm, below the required ${asked}.` }],
      notes: [`The fitted curve never reaches ${asked}; all that is known is that it had not by the last reading.`],
    };
  }
  if (value === 0) {
    return { result: { ...none, value: 0, high: 0, bound: 'at-most' }, flags: [], notes: [`The fitted curve starts above ${asked}: the requirement is met from lamination on.`] };
  }
  const { low, high } = profileInterval(curve.problem, curve.fit, { value, condition: (hours, parameters) => model.curve(hours, parameters) - required }, { level: LEVEL, lowest: 0, highest: 100 * longest });
  const extrapolated = value > longest;
  return {
    result: { ...none, value, low, high, level: low === null && high === null ? null : LEVEL },
    flags: extrapolated ? [{ code: 'extrapolated', where: 'requiredNPer15mm', text: `The ${formatNumber(value, 1)} h until ${asked} lie beyond the last reading at ${formatNumber(longest, 1)} h: test later to be sure.` }] : [],
    notes: low === null || high === null ? ['The readings do not bound the hours on each side: the open side is left empty.'] : [],
  };
}

function flags({ curve: { fit } }: FittedBuild, readings: CurveReading[]): Flag[] {
  const plateau = fit.parameters[1]!;
  const highest = Math.max(...readings.map(({ y }) => y));
  const found: Flag[] = [];
  if (plateau > 1.3 * highest) {
    found.push({ code: 'plateau-beyond-readings', where: 'readings', text: `The fitted plateau of ${formatNumber(plateau, 2)} N/15 mm lies far above the highest reading of ${formatNumber(highest, 2)}: the bond is still building up, test later.` });
  }
  if (plateau < fit.parameters[0]!) {
    found.push({ code: 'falling', where: 'readings', text: 'The fitted bond falls with time instead of building up.' });
  }
  if (!fit.converged) found.push({ code: 'not-converged', where: 'readings', text: 'The fit did not settle on one curve; judge the figure before using the numbers.' });
  return found;
}

function choiceNote(chosen: FittedBuild, fits: FittedBuild[], readings: CurveReading[]): string {
  const torn = readings.filter(({ lowerBound }) => lowerBound).length;
  const bounds = torn === 0 ? '' : ` ${torn} reading${torn === 1 ? '' : 's'} in which the film gave way count as lower bounds, by maximum likelihood.`;
  const why = fits.length === 1
    ? 'the only one that so few readings can tell'
    : fits.some(({ curve }) => curve.aicc === null)
      ? 'the simpler, since the readings are too few to compare both by AICc'
      : 'by the smaller AICc; both are in the table';
  return `Model: ${chosen.model.title}, ${why}.${bounds}`;
}
