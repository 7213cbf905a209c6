import { z } from 'zod';
import { defineCalculation, type Outcome } from '../calculation/calculation.ts';
import { InputError } from '../calculation/input-error.ts';
import type { Flag, ResultValue } from '../calculation/result.ts';
import { valueWithoutInterval } from '../calculation/value-without-interval.ts';
import { formatNumber } from '../quantity/format.ts';
import { varianceOf } from '../statistics/curve-fit.ts';
import { studentTQuantile } from '../statistics/distributions.ts';
import { levelSchema } from '../statistics/level.ts';
import { refuseAs } from '../statistics/refuse-as.ts';
import { meanOf } from '../statistics/summarise.ts';
import { coatWeightFigure } from './coat-weight-figure.ts';
import { fitCoatWeight, type CoatWeightFit } from './fit-coat-weight.ts';
import { listOf, oneOrMore } from './replicates.ts';

const reading = z.number().min(-0.05).max(1000);
const titles = { density: 'Density', strengthPct: 'Strength', absorption: 'K/S' } as const;

const input = z.strictObject({
  /** Drawdowns of one ink on one film; densities minus paper. */
  drawdowns: z.array(z.strictObject({ coatWeightGM2: z.number().gt(0).max(500), reading })).min(4).max(1000),
  quantity: z.enum(['density', 'strengthPct', 'absorption']).default('density'),
  /** Readings of the print as it is, and what it should read. */
  present: oneOrMore(reading),
  target: reading,
  /** Coat weight of the print as it is; else it follows from `present`. */
  presentCoatWeightGM2: z.number().gt(0).max(500).optional(),
  /** What would a change of coat weight by so much give? */
  coatWeightChangePct: z.number().gt(-100).max(1000).optional(),
  model: z.enum(['linear', 'saturating']).optional(),
  level: levelSchema,
});

type Given = z.output<typeof input>;

export const coatWeightStrengthCalculation = defineCalculation({
  id: 'coat-weight-strength',
  version: '1',
  title: 'Change of coat weight for a density or strength',
  input,
  compute,
  columns: [
    { key: 'coatWeightGM2', title: 'Coat weight', unit: 'g/m²', decimals: 2 },
    { key: 'reading', title: 'Reading', decimals: 3 },
    { key: 'fitted', title: 'Fitted', decimals: 3 },
    { key: 'residual', title: 'Residual', decimals: 3 },
  ],
  cautions: [],
  sources: [
    'Tollenaar & Ernst 1962 (density nearing that of a thick layer, from memory)',
    'Inverse prediction by the delta method; for a line s(x0) = (s/b)·√(1/m + 1/n + (y0 − mean y)²/(b²·Sxx)) (ISO 8466-1)',
  ],
});

function compute(given: Given): Outcome {
  const { drawdowns, present, target, level, quantity } = given;
  const weights = drawdowns.map(({ coatWeightGM2 }) => coatWeightGM2);
  const readings = drawdowns.map((drawdown) => drawdown.reading);
  if (new Set(weights).size < 3) throw new InputError('drawdowns', weights.length, 'The drawdowns need at least three different coat weights.');
  if (Math.max(...readings) <= 0) throw new InputError('drawdowns', Math.max(...readings), 'None of the drawdowns reads above zero.');
  const fitted = refuseAs('drawdowns', weights.length, () => fitCoatWeight(weights, readings, given.model));
  const { model, fit } = fitted;
  if (!(model.value(Math.max(...weights), fit.parameters) > model.value(Math.min(...weights), fit.parameters))) {
    throw new InputError('drawdowns', null, 'The reading does not rise with coat weight over these drawdowns; it cannot tell how much ink is needed.');
  }
  const presentMean = meanOf(listOf(present));
  const presentAt = (y: number, parameters: readonly number[]) => given.presentCoatWeightGM2 ?? model.inverse(y, parameters);
  const at = { present: positive(presentAt(presentMean, fit.parameters), 'present', presentMean), target: positive(model.inverse(target, fit.parameters), 'target', target) };
  const m = listOf(present).length;
  const estimate = (of: (y: number, parameters: readonly number[]) => number | null, unit: string, further = 0) => withInterval(fitted, of, presentMean, { m, further, unit, level });

  const changePct = estimate((y, parameters) => relativeChange(presentAt(y, parameters), model.inverse(target, parameters)), '%');
  const change = given.coatWeightChangePct;
  const expected = (y: number, parameters: readonly number[]) => {
    const from = presentAt(y, parameters);
    return from === null ? null : model.value(from * (1 + change! / 100), parameters);
  };
  const results: Record<string, ResultValue> = {
    changePct,
    presentCoatWeight: given.presentCoatWeightGM2 === undefined ? estimate(model.inverse, 'g/m²') : valueWithoutInterval(given.presentCoatWeightGM2, 'g/m²', 1),
    targetCoatWeight: estimate((_, parameters) => model.inverse(target, parameters), 'g/m²'),
    expectedReading: change === undefined ? valueWithoutInterval(null, '', 0) : estimate(expected, '', 1),
  };
  const finding = `${advice(changePct)} to go from ${presentMean.toFixed(2)} to ${target.toFixed(2)}.`;
  return {
    results,
    table: drawdowns.map((drawdown) => {
      const value = model.value(drawdown.coatWeightGM2, fit.parameters);
      return { ...drawdown, fitted: value, residual: drawdown.reading - value };
    }),
    flags: extrapolation(at, weights),
    notes: [
      finding,
      `Model: ${model.name}, ${model.formula}, from ${drawdowns.length} drawdowns; residual standard deviation ${fit.residualSd!.toFixed(3)}.`,
      'The interval holds the scatter of the drawdowns and of the present readings; it holds for this ink, film and viscosity only.',
    ],
    figures: [coatWeightFigure(fitted, drawdowns, at, titles[quantity], level, finding)],
  };
}

function positive(coatWeight: number | null, field: string, value: number): number {
  if (coatWeight !== null && coatWeight > 0) return coatWeight;
  throw new InputError(field, value, `By these drawdowns no coat weight gives a reading of ${value}; it lies beyond what this ink reaches on this film.`);
}

function relativeChange(from: number | null, to: number | null): number | null {
  return from === null || to === null || from === 0 ? null : 100 * (to / from - 1);
}

/** `further`: 1 for the interval of one further reading, 0 for that of the curve itself. */
interface Spread {
  m: number;
  further: number;
  unit: string;
  level: number;
}

/** A quantity of the fit and the present mean with its interval by the delta method: parameters and present scatter are independent. */
function withInterval({ fit }: CoatWeightFit, of: (y: number, parameters: readonly number[]) => number | null, present: number, { m, further, unit, level }: Spread): ResultValue {
  const value = of(present, fit.parameters)!;
  const n = fit.degreesOfFreedom + fit.parameters.length;
  const ofParameters = varianceOf(fit, (parameters) => of(present, parameters) ?? Number.NaN);
  const h = 1e-5 * Math.max(Math.abs(present), 0.01);
  const slope = ((of(present + h, fit.parameters) ?? Number.NaN) - (of(present - h, fit.parameters) ?? Number.NaN)) / (2 * h);
  if (ofParameters === null || fit.residualSd === null || !Number.isFinite(slope)) return valueWithoutInterval(value, unit, n);
  const variance = ofParameters + fit.residualSd ** 2 * (slope ** 2 / m + further);
  const reach = studentTQuantile((1 + level) / 2, fit.degreesOfFreedom) * Math.sqrt(variance);
  return { value, unit, low: value - reach, high: value + reach, level, n, bound: 'exact' };
}

/** 'Add 8.0 % ± 2.1 %', or 'Take off …'. */
function advice({ value, low, high }: ResultValue): string {
  const reach = low === null || high === null ? '' : ` ± ${formatNumber((high - low) / 2, 1)} %`;
  return `${value! < 0 ? 'Take off' : 'Add'} ${formatNumber(Math.abs(value!), 1)} %${reach} of coat weight`;
}

function extrapolation(at: { present: number; target: number }, weights: number[]): Flag[] {
  const [low, high] = [Math.min(...weights), Math.max(...weights)];
  return (['present', 'target'] as const)
    .filter((key) => at[key] < low || at[key] > high)
    .map((key) => ({ code: 'extrapolated', where: key, text: `The ${key} coat weight of ${at[key].toFixed(2)} g/m² lies outside the drawdowns (${low} to ${high} g/m²); make one there.` }));
}
