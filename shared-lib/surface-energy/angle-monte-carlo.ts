import { fQuantile } from '../statistics/distributions.ts';
import { quantile } from '../statistics/quantile.ts';
import { seededRandom, type Random } from '../statistics/random.ts';
import { ownScatterFrom, type AngleScatter } from './angle-scatter.ts';
import type { WettingModel } from './wetting-model.ts';

const draws = 10_000;
const radians = Math.PI / 180;
/** Residuals count as misfit where by the drops alone such large ones come in less than one case of twenty (F test). */
const explainedBelow = 0.95;
/** Of a cosine, for differences. */
const smallStep = 1e-5;

export interface DrawnIntervals {
  /** Ends per output of the model, or `null` where neither replicates nor the fit tell an uncertainty. */
  intervals: { low: number; high: number }[] | null;
  /** Share of the draws in which the model had no physical solution; they are left out. */
  unphysicalShare: number;
  /** Whether the model's misfit is in the intervals; the drops do not explain it then. */
  misfitCounts: boolean;
}

/**
 * Intervals of a model's outputs by Monte Carlo (JCGM 101): each draw takes the mean angle of every liquid within the scatter
 * of its drops. Where there are more liquids than parameters, the misfit of the angles beyond that scatter is added as a
 * further normal error of cos θ. All errors of a draw share one factor √(ν/χ²), with the effective degrees of freedom ν of
 * each output; with a factor of its own for each liquid the intervals came out too long (98 to 99 % instead of 95 %).
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
  if (!known && misfitDf <= 0) return { intervals: null, unphysicalShare: 0, misfitCounts: false };

  const df = effectiveDf(model, scatter, misfit, misfitDf);
  const random = seededRandom(seed);
  const offsets = new Float64Array(liquids);
  const misfits = new Float64Array(liquids);
  const cosines = new Float64Array(liquids);
  const out = new Float64Array(model.outputs.length);
  const samples = model.outputs.map(() => new Float64Array(draws));
  /** One draw of one output; false where it is not physical. */
  const solveScaled = (scale: number): boolean => {
    for (let i = 0; i < liquids; i++) {
      const cosine = Math.cos((scatter[i]!.meanDeg + scale * offsets[i]!) * radians) + scale * misfits[i]!;
      cosines[i] = Math.min(1, Math.max(-1, cosine));
    }
    return model.solve(cosines, out);
  };
  let kept = 0;
  for (let draw = 0; draw < draws; draw++) {
    for (let i = 0; i < liquids; i++) {
      offsets[i] = (scatter[i]!.uncertaintyDeg ?? 0) * random.normal();
      misfits[i] = misfit > 0 ? misfit * random.normal() : 0;
    }
    let physical = true;
    for (let output = 0; output < samples.length && physical; output++) {
      physical = solveScaled(studentScale(random, df[output]!));
      samples[output]![kept] = out[output]!;
    }
    if (physical) kept++;
  }
  const unphysicalShare = 1 - kept / draws;
  const misfitCounts = misfit > 0;
  if (kept < draws / 2) return { intervals: null, unphysicalShare, misfitCounts };
  const tail = (1 - level) / 2;
  const intervals = samples.map((sample) => {
    const drawn = sample.subarray(0, kept);
    return { low: quantile(drawn, tail), high: quantile(drawn, 1 - tail) };
  });
  return { intervals, unphysicalShare, misfitCounts };
}

/** Standard deviation of cos θ that the residuals show beyond the scatter of the drops; 0 where the drops explain them. */
function excessMisfit(model: WettingModel, scatter: readonly AngleScatter[], df: number): number {
  const cosines = Float64Array.from(scatter, ({ meanDeg }) => Math.cos(meanDeg * radians));
  const residuals = residualsOf(model, cosines);
  if (!residuals) return 0;
  /** What the drops alone let one expect of the squares, and by how much a common error of all cosines would raise them. */
  let expected = 0;
  let gain = 0;
  scatter.forEach(({ meanDeg, uncertaintyDeg }, i) => {
    const moved = cosines.slice();
    moved[i]! += smallStep;
    const after = residualsOf(model, moved) ?? residuals;
    const perUnit = sumOfSquares(after.map((residual, k) => (residual - residuals[k]!) / smallStep));
    gain += perUnit;
    expected += perUnit * (Math.sin(meanDeg * radians) * (uncertaintyDeg ?? 0) * radians) ** 2;
  });
  const squares = sumOfSquares(residuals);
  const drops = scatter.reduce((sum, { n }) => sum + n - 1, 0);
  const chance = drops > 0 ? fQuantile(explainedBelow, df, drops) : 0;
  return gain > 0 && squares > chance * expected ? Math.sqrt(Math.max(0, squares - expected) / gain) : 0;
}

/** Cosine measured minus cosine of the model, per liquid; `null` without a physical solution. */
function residualsOf(model: WettingModel, cosines: Float64Array): Float64Array | null {
  const out = new Float64Array(model.outputs.length);
  return model.solve(cosines, out) ? cosines.map((cosine, i) => cosine - model.predict(out, i)) : null;
}

function sumOfSquares(values: Float64Array): number {
  return values.reduce((sum, value) => sum + value * value, 0);
}

/**
 * Effective degrees of freedom of each output by Welch and Satterthwaite (JCGM 100:2008, G.4), whole and at least 1. Liquids
 * that share the pooled scatter count as one component.
 */
function effectiveDf(model: WettingModel, scatter: readonly AngleScatter[], misfit: number, misfitDf: number): number[] {
  const cosines = Float64Array.from(scatter, ({ meanDeg }) => Math.cos(meanDeg * radians));
  const centre = new Float64Array(model.outputs.length);
  const moved = new Float64Array(model.outputs.length);
  if (!model.solve(cosines, centre)) return model.outputs.map(() => 1);
  /** Squares by which the outputs move when one cosine does. */
  const variances = (i: number, cosine: number): Float64Array => {
    const at = cosines.slice();
    at[i] = cosine;
    return model.solve(at, moved) ? moved.map((value, output) => (value - centre[output]!) ** 2) : moved.map(() => 0);
  };
  const components = new Map<string, { df: number; variance: Float64Array }>();
  const add = (name: string, df: number, more: Float64Array) => {
    const variance = components.get(name)?.variance ?? more.map(() => 0);
    components.set(name, { df, variance: variance.map((value, output) => value + more[output]!) });
  };
  scatter.forEach(({ n, meanDeg, uncertaintyDeg, df }, i) => {
    if (uncertaintyDeg) add(n < ownScatterFrom ? 'pooled' : `liquid ${i}`, df, variances(i, Math.cos((meanDeg + uncertaintyDeg) * radians)));
    if (misfit > 0) add('misfit', misfitDf, variances(i, cosines[i]! + misfit));
  });
  return model.outputs.map((_, output) => {
    let sum = 0;
    let squares = 0;
    for (const { df, variance } of components.values()) {
      sum += variance[output]!;
      squares += variance[output]! ** 2 / df;
    }
    return squares > 0 ? Math.max(1, Math.floor(sum ** 2 / squares)) : 1;
  });
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
