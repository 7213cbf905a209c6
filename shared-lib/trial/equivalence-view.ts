import { runCalculation } from '../calculation/calculation.ts';
import { InputError } from '../calculation/input-error.ts';
import type { ResultValue } from '../calculation/result.ts';
import type { Figure } from '../figure/figure.ts';
import type { Property } from '../method/method.ts';
import type { EquivalenceView } from '../notebook/trial-views.ts';
import { differenceUnit } from '../quantity/difference-unit.ts';
import { formatValue } from '../quantity/format.ts';
import { fitCensoredNormal } from '../statistics/censored-normal.ts';
import { equivalenceCalculation } from '../statistics/equivalence.calculation.ts';
import type { ColumnTrial } from './column-trial.ts';
import { areExact, censoredOf, observationOf } from './trial-reading.ts';

/**
 * Whether trial `a` is equivalent to `b` in one response, the difference a − b lying within the bounds.
 * @throws InputError for a grade, readings that leave the mean open on a side, fewer than two readings, or bounds in disorder
 */
export function equivalenceView(property: Property, a: ColumnTrial, b: ColumnTrial, bounds: { lowerBound: number; upperBound: number }, level: number): EquivalenceView {
  if (property.kind === 'grade') throw new InputError('response', property.key, `${property.title} is a grade; equivalence needs a measured number.`);
  refuseOpenMean(a, 'trialId');
  refuseOpenMean(b, 'fromTrialId');
  const result = runCalculation(equivalenceCalculation, { a: a.readings.map(observationOf), b: b.readings.map(observationOf), ...bounds, unit: differenceUnit(property.unit), level });
  const { difference, p } = result.results as { difference: ResultValue; p: ResultValue };
  const shown = p.value! <= 1 - level;
  const { text, intervalText } = formatValue(difference, [bounds.lowerBound, bounds.upperBound]);
  const within = `${text} (${intervalText})`;
  const bounded = [...a.readings, ...b.readings].filter((reading) => typeof observationOf(reading) !== 'number').length;
  const note = bounded === 0 ? '' : ` ${bounded} ${bounded === 1 ? 'reading is only a bound or bracket and counts' : 'readings are only bounds or brackets and count'} as such.`;
  const allowed = `${signed(bounds.lowerBound)} to ${signed(bounds.upperBound)}${property.unit && ` ${differenceUnit(property.unit)}`}`;
  const sentence = shown
    ? `${a.name} is equivalent to ${b.name} in ${property.title}: ${a.name} − ${b.name} is ${within}, all of it within ${allowed}.`
    : `Equivalence of ${a.name} and ${b.name} in ${property.title} is not shown: ${a.name} − ${b.name} is ${within}, not all of it within ${allowed}. Not shown does not mean different.`;
  return { shown, text: sentence + note, result, figure: figure(property, a, b, difference, bounds, sentence) };
}

function refuseOpenMean({ name, readings }: ColumnTrial, field: string): void {
  if (readings.length < 2) throw new InputError(field, name, `${name} has ${readings.length === 0 ? 'no readings' : 'one reading'} in this response; equivalence needs two or more of each.`);
  if (areExact(readings)) return;
  const { status, reason, standardDeviation } = fitCensoredNormal(readings.map(censoredOf));
  if (status === 'at-least' || status === 'at-most') {
    const [side, where] = status === 'at-least' ? ['lower', 'higher'] : ['upper', 'lower'];
    throw new InputError(field, name, `Every reading of ${name} is only a ${side} bound (a film that tore, a fluid that held): its mean may be any amount ${where}, so equivalence can be neither shown nor ruled out. Add readings that are not bounds (a tearing film backed with tape, more fluids or more load), or ask in the table whether it is better or worse.`);
  }
  if (status === 'between' || !standardDeviation) {
    throw new InputError(field, name, `${name}: ${reason} Equivalence can be neither shown nor ruled out; test more specimens, or read more finely.`);
  }
}

function figure(property: Property, a: ColumnTrial, b: ColumnTrial, { value, low, high }: ResultValue, { lowerBound, upperBound }: { lowerBound: number; upperBound: number }, finding: string): Figure {
  return {
    id: 'equivalence',
    title: `${a.name} against ${b.name}: ${property.title}`,
    finding,
    x: { title: '', scale: 'category', categories: [`${a.name} − ${b.name}`] },
    y: { title: 'Difference', ...(property.unit && { unit: differenceUnit(property.unit) }), scale: 'linear' },
    series: [{ name: 'difference with its interval', kind: 'points', role: 'reading', points: [{ x: 0, y: value, ...(low !== null && high !== null && { low, high }) }] }],
    lines: [
      { name: 'equivalent from here', axis: 'y', value: lowerBound, role: 'limit' },
      { name: 'equivalent up to here', axis: 'y', value: upperBound, role: 'limit' },
      { name: 'no difference', axis: 'y', value: 0, role: 'mark' },
    ],
  };
}

function signed(value: number): string {
  return String(value).replace('-', '−');
}
