import type { Flag, ResultValue } from '../calculation/result.ts';
import { chooseFadeModel, type ModelChoice } from './choose-fade-model.ts';
import { combineLives } from './combine-lives.ts';
import { exposureToLimit } from './exposure-to-limit.ts';
import type { FadeQuantity } from './fade-quantity.ts';
import type { FadeSeries } from './fade-series.ts';
import { fitFadeModels, type ModelFit } from './fit-fade-models.ts';
import { lifeFlags } from './life-flags.ts';
import { spanModels } from './span-models.ts';

export interface FadeLife {
  fits: ModelFit[];
  choice: ModelChoice;
  /** Of each series by the chosen model; empty without a limit. */
  lives: ResultValue[];
  /** Of all series together, its interval over all models that are not ruled out; `null` without a limit. */
  life: ResultValue | null;
  /** Models besides the chosen one that the interval spans. */
  rivals: ModelFit[];
  flags: Flag[];
}

/**
 * A model whose AICc is higher by more than this has hardly any support left: K. P. Burnham, D. R. Anderson, Sociol. Methods
 * Res. 33 (2004) 261. With the chosen model's interval alone, a limit beyond the readings was covered in 3 of 4 cases only.
 */
const RULED_OUT = 7;

/**
 * Fits the models of a quantity to every series, chooses one and asks it for the exposure to the limit.
 * @param limit retained fraction or ΔE, `null` where none is set.
 * @param unit of the exposures.
 */
export function fadeLife(quantity: FadeQuantity, series: FadeSeries[], limit: number | null, unit: string, level: number): FadeLife {
  const fits = fitFadeModels(quantity.models, series, quantity.unfaded);
  const largest = Math.max(...series.flatMap(({ values }) => values.map(Math.abs)));
  const choice = chooseFadeModel(fits, Math.max(quantity.unfaded, largest), quantity.fallback);
  if (limit === null) return { fits, choice, lives: [], life: null, rivals: [], flags: [] };

  const { chosen } = choice;
  const question = { limit, isPast: (value: number) => quantity.isPast(value, limit), unit, level, exact: choice.why === 'exact' };
  const livesBy = ({ model, series: fitted }: ModelFit) => fitted.map((one) => exposureToLimit(model, one, question));
  const lives = livesBy(chosen);
  const rivals = choice.why === 'aicc' ? fits.filter((fit) => fit !== chosen && fit.aicc !== null && fit.aicc - chosen.aicc! <= RULED_OUT) : [];
  const life = spanModels(combineLives(lives, level), rivals.map((rival) => combineLives(livesBy(rival), level)));
  return { fits, choice, lives, life, rivals, flags: lifeFlags(fits, choice, lives, limit) };
}
