import { runCalculation } from '../calculation/calculation.ts';
import { InputError } from '../calculation/input-error.ts';
import type { Property } from '../method/method.ts';
import type { PlanView } from '../notebook/trial-views.ts';
import { differenceUnit } from '../quantity/difference-unit.ts';
import { formatNumber, plainDecimals } from '../quantity/format.ts';
import { sampleSizeCalculation } from '../statistics/sample-size.calculation.ts';
import type { ColumnTrial } from './column-trial.ts';
import { spreadWithin } from './spread-within.ts';

export interface Wanted {
  difference: number;
  /** `difference`: to see one as large; `equivalence`: to prove that there is none as large. */
  design: 'difference' | 'equivalence';
  power: number;
  level: number;
}

/** The calculation takes no level beyond. */
const HIGHEST_LEVEL = 0.9999;

/**
 * Readings per trial, by the spread that the trials show now. Where several trials are compared with a control at once,
 * each comparison must be surer: the doubt is shared out among them (Bonferroni).
 * @throws InputError for a grade, or while no trial shows a spread
 */
export function planReplicates(property: Property, trials: readonly ColumnTrial[], { difference, design, power, level }: Wanted): PlanView {
  if (property.kind === 'grade') throw new InputError('response', property.key, `${property.title} is a grade; planning needs a measured number.`);
  const spread = spreadWithin(trials);
  if (!spread) throw new InputError('response', property.key, `No trial has readings of ${property.title} that scatter; the plan needs at least two that differ.`);
  const comparisons = design === 'difference' ? Math.max(1, trials.length - 1) : 1;
  const result = runCalculation(sampleSizeCalculation, {
    design: design === 'difference' ? 'two-sample' : 'equivalence',
    difference,
    standardDeviation: spread.standardDeviation,
    unit: property.unit,
    power,
    level: Math.min(HIGHEST_LEVEL, 1 - (1 - level) / comparisons),
  });
  const { value, bound } = result.results.perGroup!;
  const size = `${formatNumber(difference, plainDecimals(difference))}${property.unit && ` ${differenceUnit(property.unit)}`}`;
  const many = `${bound === 'at-least' ? 'More than ' : ''}${value} readings per trial`;
  const chance = `with a chance of ${formatNumber(power * 100, plainDecimals(power * 100))} %`;
  const aim = design === 'difference' ? `would show a difference of ${size} ${chance}` : `would prove two that are alike equivalent within ±${size} ${chance}`;
  const shared = comparisons > 1 ? `, with ${comparisons} comparisons at once` : '';
  return { perTrial: value!, text: `${many} ${aim}${shared}.`, ...spread, unit: property.unit, result };
}
