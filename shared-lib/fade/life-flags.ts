import type { Flag, ResultValue } from '../calculation/result.ts';
import { formatNumber, plainDecimals } from '../quantity/format.ts';
import type { ModelChoice } from './choose-fade-model.ts';
import type { ModelFit } from './fit-fade-models.ts';

/** Models whose AICc lies closer than this are equally good (Burnham & Anderson 2002, 2.6, rule of thumb). */
const equallyGood = 2;
/** Exposures to the limit that differ by more than this share are another conclusion. */
const sameLife = 0.2;

/** What the reader must know of an exposure to a limit: extrapolation, open intervals, a choice that hangs in the balance. */
export function lifeFlags(fits: readonly ModelFit[], choice: ModelChoice, lives: readonly ResultValue[], limit: number): Flag[] {
  const { chosen, why } = choice;
  const flags: Flag[] = [];
  if (why === 'too-few') {
    flags.push({ code: 'too-few-to-choose', where: '', text: `Too few readings to choose a model by AICc; ${chosen.model.title} was assumed.` });
  }
  chosen.series.forEach((one, index) => flags.push(...seriesFlags(one.series.name, Math.max(...one.series.exposures), lives[index]!)));
  const rival = why === 'exact' ? undefined : rivalOf(fits, choice, limit);
  if (rival) {
    flags.push({
      code: 'models-disagree',
      where: '',
      text: `${upper(rival.title)} fits about as well and comes to the limit ${Number.isFinite(rival.life) ? `at ${show(rival.life)}` : 'never'}; read on until the limit to decide.`,
    });
  }
  return flags;
}

function seriesFlags(name: string, farthest: number, { value, high, level, bound, unit }: ResultValue): Flag[] {
  const where = name === '' ? '' : `series ${name}`;
  const flags: Flag[] = [];
  if (value === null) {
    flags.push({ code: 'no-life', where, text: 'The readings scatter about the limit without a curve that crosses it; the exposure to the limit cannot be given.' });
  } else if (bound === 'at-most') {
    flags.push({ code: 'past-at-first-reading', where, text: `The limit was passed before the first reading at ${show(value)} ${unit}; read earlier to find out when.` });
  } else if (bound === 'at-least') {
    flags.push({ code: 'never-reached', where, text: `The fitted curve does not come to the limit; all that is known is that the print lasts at least ${show(value)} ${unit}.` });
  } else if (value > farthest) {
    const text = `Extrapolated: ${show(value)} ${unit} is ${formatNumber(value / farthest, 1)} times the farthest exposure read (${show(farthest)} ${unit}). The interval knows only the scatter, not whether the curve goes on like this.`;
    flags.push({ code: 'extrapolated', where, text });
  }
  if (bound === 'exact' && level !== null && high === null) {
    flags.push({ code: 'open-interval', where, text: 'The readings do not show enough fading to give the interval an upper end.' });
  }
  return flags;
}

/** A model as good as the chosen one whose geometric mean life is another. */
function rivalOf(fits: readonly ModelFit[], { chosen }: ModelChoice, limit: number): { title: string; life: number } | undefined {
  const own = meanLife(chosen, limit);
  return fits
    .filter((fit) => fit !== chosen && fit.aicc !== null && chosen.aicc !== null && fit.aicc - chosen.aicc < equallyGood)
    .map((fit) => ({ title: fit.model.title, life: meanLife(fit, limit) }))
    .find(({ life }) => life !== own && !(Math.abs(Math.log(life / own)) <= Math.log1p(sameLife)));
}

function meanLife({ model, series }: ModelFit, limit: number): number {
  const logarithms = series.map(({ fit }) => Math.log(model.exposureAt(limit, fit.parameters)));
  return Math.exp(logarithms.reduce((sum, value) => sum + value, 0) / logarithms.length);
}

function upper(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}

function show(value: number): string {
  return formatNumber(value, plainDecimals(value));
}
