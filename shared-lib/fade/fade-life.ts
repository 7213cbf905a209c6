import type { Flag, ResultValue } from '../calculation/result.ts';
import { chooseFadeModel, type ModelChoice } from './choose-fade-model.ts';
import { combineLives } from './combine-lives.ts';
import { exposureToLimit } from './exposure-to-limit.ts';
import type { FadeQuantity } from './fade-quantity.ts';
import type { FadeSeries } from './fade-series.ts';
import { fitFadeModels, type ModelFit } from './fit-fade-models.ts';
import { lifeFlags } from './life-flags.ts';

export interface FadeLife {
  fits: ModelFit[];
  choice: ModelChoice;
  /** Of each series by the chosen model; empty without a limit. */
  lives: ResultValue[];
  /** Of all series together, `null` without a limit. */
  life: ResultValue | null;
  flags: Flag[];
}

/**
 * Fits the models of a quantity to every series, chooses one and asks it for the exposure to the limit.
 * @param limit retained fraction or ΔE, `null` where none is set.
 * @param unit of the exposures.
 */
export function fadeLife(quantity: FadeQuantity, series: FadeSeries[], limit: number | null, unit: string, level: number): FadeLife {
  const fits = fitFadeModels(quantity.models, series, quantity.unfaded);
  const largest = Math.max(...series.flatMap(({ values }) => values.map(Math.abs)));
  const choice = chooseFadeModel(fits, Math.max(quantity.unfaded, largest), quantity.fallback);
  if (limit === null) return { fits, choice, lives: [], life: null, flags: [] };

  const { chosen } = choice;
  const question = { limit, isPast: (value: number) => quantity.isPast(value, limit), unit, level, exact: choice.why === 'exact' };
  const lives = chosen.series.map((one) => exposureToLimit(chosen.model, one, question));
  return { fits, choice, lives, life: combineLives(lives, level), flags: lifeFlags(fits, choice, lives, limit) };
}
