import { InputError } from '../calculation/input-error.ts';
import { inverseOfLine } from '../statistics/inverse-prediction.ts';
import { fitLinear, type LinearFit } from '../statistics/linear-regression.ts';
import { summarise } from '../statistics/summarise.ts';

/** Diluent to add, in percent of the mixture, with its interval where there is one. */
export interface LetDown {
  pct: number;
  low: number | null;
  high: number | null;
  n: number;
}

/**
 * To a target strength: the strength of an ink let down with an extender is in proportion to the share of ink
 * (Kubelka–Munk: K/S is additive by concentration while the scattering of the white substrate prevails).
 * @param inkStrengthsPct drawdowns of the ink against the standard; several give an interval
 * @throws InputError when the target is stronger than the ink
 */
export function letDownToStrength(inkStrengthsPct: readonly number[], targetStrengthPct: number, level: number): LetDown {
  const { mean, low, high, n } = summarise(inkStrengthsPct, level);
  if (targetStrengthPct > mean) {
    throw new InputError('letDown.targetStrengthPct', targetStrengthPct, `An ink of ${Number(mean.toPrecision(4))} % cannot be let down to ${targetStrengthPct} %: the target must not be stronger.`);
  }
  const share = (strength: number) => Math.max(0, 100 * (1 - targetStrengthPct / strength));
  return { pct: share(mean), low: low === null ? null : low > 0 ? share(low) : 0, high: high === null ? null : share(high), n };
}

/**
 * To a target viscosity from those of ink and diluent alone: the logarithms mix by mass, ln η = Σ w·ln η
 * (S. Arrhenius, Z. Phys. Chem. 1 (1887) 285). A first guess: structured inks thin faster.
 * @throws InputError when the target does not lie between the two
 */
export function letDownByMixingRule(ink: number, diluent: number, target: number): LetDown {
  if (diluent >= ink) throw new InputError('letDown.diluentMm2S', diluent, `The diluent (${diluent} mm²/s) must be thinner than the ink (${ink} mm²/s).`);
  if (target > ink || target < diluent) {
    throw new InputError('letDown.targetMm2S', target, `The target of ${target} mm²/s must lie between the diluent (${diluent} mm²/s) and the ink (${ink} mm²/s).`);
  }
  return { pct: (100 * Math.log(ink / target)) / Math.log(ink / diluent), low: null, high: null, n: 0 };
}

/**
 * To a target viscosity from trial additions: straight line of ln η against the percentage of diluent, solved for the
 * target, with the interval of Fieller's theorem (E. C. Fieller, J. R. Stat. Soc. B 16 (1954) 175).
 * @param additions at least three, at two percentages or more
 * @throws InputError when viscosity does not fall, or the target lies beyond what was tried
 */
export function letDownByTrial(additions: readonly { pct: number; mm2S: number }[], target: number, level: number): LetDown {
  const x = additions.map(({ pct }) => pct);
  const fit = thinningLine(additions);
  const slope = fit.coefficients[1]!;
  if (slope >= 0) throw new InputError('letDown.additions', slope, 'Viscosity does not fall as diluent is added; check the readings.');
  const { x: pct, fieller } = inverseOfLine(fit, Math.log(target), level);
  if (pct < Math.min(...x) - 1e-9 || pct > Math.max(...x) + 1e-9) {
    throw new InputError('letDown.targetMm2S', target, `The target of ${target} mm²/s lies beyond the additions that were tried; try more diluent${pct < Math.min(...x) ? ' or less' : ''} first.`);
  }
  return { pct, low: fieller && Math.max(0, fieller.low), high: fieller && Math.min(100, fieller.high), n: additions.length };
}

/** Straight line of ln viscosity against the percentage of diluent. @throws InputError for one percentage alone */
export function thinningLine(additions: readonly { pct: number; mm2S: number }[]): LinearFit {
  const x = additions.map(({ pct }) => pct);
  if (new Set(x).size < 2) throw new InputError('letDown.additions', x[0], 'The additions need at least two different percentages of diluent.');
  return fitLinear([x], additions.map(({ mm2S }) => Math.log(mm2S)), { intercept: true });
}
