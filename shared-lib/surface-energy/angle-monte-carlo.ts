import { quantile } from '../statistics/quantile.ts';
import { seededRandom, type Random } from '../statistics/random.ts';
import type { AngleScatter } from './angle-scatter.ts';
import type { WettingModel } from './wetting-model.ts';

const draws = 10_000;
const radians = Math.PI / 180;

export interface DrawnIntervals {
  /** Ends per output of the model, or `null` where neither replicates nor the fit tell an uncertainty. */
  intervals: { low: number; high: number }[] | null;
  /** Share of the draws in which the model had no physical solution; they are left out. */
  unphysicalShare: number;
}

/**
 * Intervals of a model's outputs by Monte Carlo (JCGM 101): each draw takes the mean angle of every liquid from Student's t
 * of its drops. Where there are more liquids than parameters, the misfit of the angles beyond that scatter is added as a
 * further normal error of cos θ, its size drawn with the degrees of freedom that the fit leaves.
 *
 * @param level coverage of the interval, 0–1
 * @param seed the same seed gives the same intervals
 */
export function drawIntervals(
  model: WettingModel,
  scatter: readonly AngleScatter[],
  level: number,
  seed: number,
): DrawnIntervals {
  const liquids = scatter.length;
  const misfitDf = liquids - model.parameters;
  const misfit = misfitDf > 0 ? excessMisfit(model, scatter, misfitDf) : 0;
  const known = scatter.every(({ uncertaintyDeg }) => uncertaintyDeg !== null);
  if (!known && misfitDf <= 0) return { intervals: null, unphysicalShare: 0 };

  const random = seededRandom(seed);
  const cosines = new Float64Array(liquids);
  const out = new Float64Array(model.outputs.length);
  const samples = model.outputs.map(() => new Float64Array(draws));
  let kept = 0;
  for (let draw = 0; draw < draws; draw++) {
    const spread = misfit > 0 ? misfit * studentScale(random, misfitDf) : 0;
    for (let i = 0; i < liquids; i++) {
      const { meanDeg, uncertaintyDeg, df } = scatter[i]!;
      const off = uncertaintyDeg ? uncertaintyDeg * random.normal() * studentScale(random, df) : 0;
      const cosine = Math.cos((meanDeg + off) * radians) + (spread > 0 ? spread * random.normal() : 0);
      cosines[i] = Math.min(1, Math.max(-1, cosine));
    }
    if (!model.solve(cosines, out)) continue;
    for (let output = 0; output < samples.length; output++) samples[output]![kept] = out[output]!;
    kept++;
  }
  const unphysicalShare = 1 - kept / draws;
  if (kept < draws / 2) return { intervals: null, unphysicalShare };
  const tail = (1 - level) / 2;
  const intervals = samples.map((sample) => {
    const drawn = sample.subarray(0, kept);
    return { low: quantile(drawn, tail), high: quantile(drawn, 1 - tail) };
  });
  return { intervals, unphysicalShare };
}

/** Standard deviation of cos θ that the residuals show beyond the scatter of the drops. */
function excessMisfit(model: WettingModel, scatter: readonly AngleScatter[], df: number): number {
  const cosines = Float64Array.from(scatter, ({ meanDeg }) => Math.cos(meanDeg * radians));
  const out = new Float64Array(model.outputs.length);
  if (!model.solve(cosines, out)) return 0;
  let squares = 0;
  let expected = 0;
  scatter.forEach(({ meanDeg, uncertaintyDeg }, i) => {
    squares += (cosines[i]! - model.predict(out, i)) ** 2;
    expected += (Math.sin(meanDeg * radians) * (uncertaintyDeg ?? 0) * radians) ** 2;
  });
  return Math.sqrt(Math.max(0, squares / df - expected / scatter.length));
}

/**
 * √(df/χ²) by which a normal draw becomes Student's t. χ² with an even df is −2 ln of the product of df/2 uniforms; an odd
 * one adds a squared normal. Wilson and Hilferty's cube from 30 on.
 */
function studentScale(random: Random, df: number): number {
  if (df >= 30) {
    const spread = 2 / (9 * df);
    return (1 - spread + random.normal() * Math.sqrt(spread)) ** -1.5;
  }
  let product = 1;
  for (let k = 1; k < df; k += 2) product *= 1 - random.uniform();
  const chiSquare = -2 * Math.log(product) + (df % 2 === 1 ? random.normal() ** 2 : 0);
  return Math.sqrt(df / chiSquare);
}
