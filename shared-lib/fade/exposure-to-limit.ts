import type { ResultValue } from '../calculation/result.ts';
import { profileInterval } from '../statistics/profile-interval.ts';
import type { FadeModel } from './fade-model.ts';
import type { SeriesFit } from './fit-fade-models.ts';

export interface LifeQuestion {
  /** Retained fraction or ΔE at which the print counts as faded. */
  limit: number;
  /** Whether a reading has come to the limit or gone past it. */
  isPast: (value: number) => boolean;
  unit: string;
  level: number;
  /** No scatter to judge by: the interval cannot be given. */
  exact: boolean;
}

/** Where the search for the lower end stops; at exposure 0 itself every curve is unfaded. */
const leastShare = 1e-4;

/**
 * Exposure at which a series comes to the limit, with its profile interval.
 * - Every exposed reading past the limit: at most the first exposure.
 * - The curve never comes to the limit: at least the last exposure that was still short of it.
 * - An end of the interval that the readings do not bound is `null`.
 */
export function exposureToLimit(model: FadeModel, { series, fit, problem }: SeriesFit, question: LifeQuestion): ResultValue {
  const { limit, isPast, unit, level } = question;
  const open: ResultValue = { value: null, unit, low: null, high: null, level: null, n: problem.x.length, bound: 'exact' };
  const exposed = series.exposures.map((exposure, index) => ({ exposure, past: isPast(series.values[index]!) })).filter(({ exposure }) => exposure > 0);
  if (exposed.every(({ past }) => past)) return { ...open, value: exposed[0]!.exposure, bound: 'at-most' };

  const life = model.exposureAt(limit, fit.parameters);
  if (!Number.isFinite(life)) {
    const firstPast = exposed.findIndex(({ past }) => past);
    const stillShort = firstPast === -1 ? exposed.at(-1) : exposed[firstPast - 1];
    return stillShort ? { ...open, value: stillShort.exposure, bound: 'at-least' } : open;
  }
  if (question.exact || fit.degreesOfFreedom === 0) return { ...open, value: life };
  const condition = (exposure: number, parameters: readonly number[]) => model.at(exposure, parameters) - limit;
  const interval = profileInterval(problem, fit, { value: life, condition }, { level, lowest: leastShare * life });
  return { ...open, value: life, low: interval.low, high: interval.high, level };
}
