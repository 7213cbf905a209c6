import { runCalculation } from '../calculation/calculation.ts';
import { InputError } from '../calculation/input-error.ts';
import type { CalculationResult } from '../calculation/result.ts';
import type { Figure } from '../figure/figure.ts';
import type { Property } from '../method/method.ts';
import type { Factor } from '../notebook/trial-entries.ts';
import type { FactorView } from '../notebook/trial-views.ts';
import { differenceUnit } from '../quantity/difference-unit.ts';
import { formatValue } from '../quantity/format.ts';
import { regressionCalculation } from '../statistics/regression.calculation.ts';
import { twoFactorCalculation } from '../statistics/two-factor.calculation.ts';
import type { ColumnTrial } from './column-trial.ts';
import { observationOf, type TrialReading } from './trial-reading.ts';

/** A trial with the settings of its factors. */
export type FactorTrial = ColumnTrial & { factors: Record<string, number> };

interface SetReading {
  at: number[];
  reading: TrialReading;
  trial: string;
}

/**
 * A response against one factor (straight line with its band) or two (analysis of variance with interaction), from the
 * single readings of the trials that state the factors.
 * @throws InputError for a grade, or where too few trials state the factors
 */
export function factorView(property: Property, factors: readonly Factor[], trials: readonly FactorTrial[], level: number): FactorView {
  if (property.kind === 'grade') throw new InputError('response', property.key, `${property.title} is a grade; a line or an analysis of variance needs a measured number.`);
  const stated = trials.filter((trial) => factors.every(({ key }) => trial.factors[key] !== undefined));
  const readings = stated.flatMap(({ name, readings: own, factors: settings }) =>
    own.map((reading): SetReading => ({ at: factors.map(({ key }) => settings[key]!), reading, trial: name })),
  );
  factors.forEach(({ label }, place) => {
    if (new Set(readings.map(({ at }) => at[place])).size < 2) {
      throw new InputError(`factors[${place}]`, label, `${label} needs readings at two settings at least; state it for more trials, or measure them.`);
    }
  });
  const left = trials.filter((trial) => trial.readings.length > 0 && !stated.includes(trial)).map(({ name }) => name);
  const notes = [...(left.length === 0 ? [] : [`Left out, for they do not state ${factors.map(({ label }) => label).join(' and ')}: ${left.join(', ')}.`]), ...boundNotes(readings)];
  return factors.length === 1 ? against(property, factors[0]!, readings, level, notes) : together(property, factors[0]!, factors[1]!, readings, level, notes);
}

/** Neither calculation takes bounds. */
function boundNotes(readings: SetReading[]): string[] {
  const found = readings.map(({ reading }) => observationOf(reading));
  const open = found.filter((value) => typeof value !== 'number' && !('low' in value)).length;
  const brackets = found.filter((value) => typeof value !== 'number' && 'low' in value).length;
  return [
    ...(brackets === 0 ? [] : [`${brackets} readings are brackets and count by their middle here.`]),
    ...(open === 0 ? [] : [`${open} ${open === 1 ? 'reading is only a bound and counts' : 'readings are only bounds and count'} by that bound here: effects may be larger than shown.`]),
  ];
}

function against(property: Property, factor: Factor, readings: SetReading[], level: number, notes: string[]): FactorView {
  const result = runCalculation(regressionCalculation, { x: readings.map(({ at }) => at[0]!), y: readings.map(({ reading }) => reading.value), level });
  const slope = result.results.x1!;
  const per = factor.unit ? `${factor.unit} of ${factor.label}` : `step of ${factor.label}`;
  const shown = formatValue({ ...slope, unit: differenceUnit(property.unit) });
  const p = result.table.find((row) => row.term === 'x1')!.p;
  const clear = typeof p === 'number' && p < 1 - level;
  const conclusions = [
    clear
      ? `${property.title} ${slope.value! > 0 ? 'rises' : 'falls'} with ${factor.label}: ${shown.text} per ${per}, ${shown.intervalText}.`
      : `No straight-line effect of ${factor.label} on ${property.title} can be told from the scatter${shown.intervalText ? `: ${shown.text} per ${per}, ${shown.intervalText}` : ''}.`,
    ...notes,
  ];
  return { conclusions, result, columns: regressionCalculation.columns, figures: result.figures.map((figure) => lineFigure(figure, property, factor, readings, conclusions[0]!)) };
}

/** The calculation's figure in the words of the response and the factor, bounds with their arrow. */
function lineFigure(figure: Figure, property: Property, factor: Factor, readings: SetReading[], finding: string): Figure {
  return {
    ...figure,
    id: 'factor-line',
    title: `${property.title} against ${factor.label}`,
    finding,
    x: { title: factor.label, ...(factor.unit && { unit: factor.unit }), scale: 'linear' },
    y: { title: property.title, ...(property.unit && { unit: property.unit }), scale: 'linear' },
    series: figure.series.map((series) =>
      series.role === 'reading' ? { ...series, points: readings.map(({ at, reading, trial }) => ({ x: at[0]!, y: reading.value, label: trial, ...(reading.open && { open: reading.open }) })) } : series,
    ),
  };
}

function together(property: Property, a: Factor, b: Factor, readings: SetReading[], level: number, notes: string[]): FactorView {
  const named = ({ label, unit }: Factor) => (unit ? `${label} (${unit})` : label).slice(0, 60);
  const inOrder = [...readings].sort((one, other) => one.at[0]! - other.at[0]! || one.at[1]! - other.at[1]!);
  const result: CalculationResult = runCalculation(twoFactorCalculation, {
    readings: inOrder.map(({ at, reading }) => ({ a: at[0], b: at[1], value: reading.value })),
    nameA: named(a),
    nameB: named(b),
    unit: property.unit,
    level,
  });
  return {
    conclusions: [...result.notes, ...result.flags.map(({ text }) => text), ...notes],
    result,
    columns: twoFactorCalculation.columns,
    figures: result.figures.map((figure) => ({ ...figure, y: { ...figure.y, title: property.title } })),
  };
}
