import { aiccOfLikelihood } from '../statistics/akaike.ts';
import { fitCurve, type CurveFit, type CurveModel, type CurveProblem } from '../statistics/curve-fit.ts';
import { normalLogDensity, normalUpperTail } from '../statistics/distributions.ts';

/** A reading on a curve; a lower bound where the true value may lie above `y`. */
export interface CurveReading {
  x: number;
  y: number;
  lowerBound: boolean;
}

export interface CensoredCurveFit {
  /** Parameters, and their spread from the information of the likelihood. */
  fit: CurveFit;
  /** The weighted least squares problem that the likelihood comes to at its maximum, for profile intervals. */
  problem: CurveProblem;
  /** Standard deviation about the curve, maximum likelihood. */
  sigma: number;
  /** Up to a constant that is the same for every curve through the same readings; `null` for too few readings. */
  aicc: number | null;
}

export interface CurveSearch {
  model: CurveModel;
  start: number[][];
  lower: number[];
  upper: number[];
}

const MOST_ROUNDS = 200;
/** A scatter below this share of the largest reading counts as none. */
const LEAST_SIGMA = 1e-9;
const LEAST_WEIGHT = 1e-9;

/**
 * Curve through readings of which some are only lower bounds, by maximum likelihood for a normal scatter. Iterates
 * weighted least squares: a lower bound enters with the working value and weight (score and information) of its tail
 * probability, so that one far below the curve counts for nothing and one above pulls the curve up. Without lower bounds
 * this is ordinary least squares in one round.
 * @throws RangeError as `fitCurve`.
 * Source: W. Q. Meeker, L. A. Escobar, Statistical Methods for Reliability Data (1998), chapter 17; iteration as in
 * P. J. Green, J. R. Stat. Soc. B 46 (1984) 149.
 */
export function fitCensoredCurve(readings: readonly CurveReading[], { model, start, lower, upper }: CurveSearch): CensoredCurveFit {
  const n = readings.length;
  const x = readings.map((reading) => reading.x);
  const scale = Math.max(...readings.map(({ y }) => Math.abs(y)));
  const floor = LEAST_SIGMA * scale;
  const sigmaOf = (squares: number) => Math.max(Math.sqrt(squares / n), floor);
  let problem: CurveProblem = { model, x, y: readings.map(({ y }) => y), lower, upper };
  let fit = fitCurve({ ...problem, start });
  let sigma = sigmaOf(fit.residualSumOfSquares);
  if (readings.some(({ lowerBound }) => lowerBound)) {
    for (let round = 0; round < MOST_ROUNDS; round += 1) {
      const before = { sigma, parameters: fit.parameters };
      const working = readings.map((reading) => workingValue(reading, model(reading.x, before.parameters), before.sigma));
      problem = { model, x, y: working.map(({ y }) => y), weights: working.map(({ weight }) => weight), lower, upper };
      fit = fitCurve({ ...problem, start: [before.parameters] });
      const { parameters } = fit;
      sigma = sigmaOf(readings.reduce((sum, reading) => sum + expectedSquare(reading, model(reading.x, parameters), before.sigma), 0));
      const moved = Math.max(Math.abs(sigma - before.sigma), ...x.map((at) => Math.abs(model(at, parameters) - model(at, before.parameters))));
      if (moved <= LEAST_SIGMA * scale) break;
    }
  }
  const { parameters, degreesOfFreedom } = fit;
  const logLikelihood = readings.reduce((sum, reading) => sum + logLikelihoodOf(reading, model(reading.x, parameters), sigma), 0);
  return {
    fit: degreesOfFreedom > 0 ? withSpread(fit, sigma * Math.sqrt(n / degreesOfFreedom)) : fit,
    problem,
    sigma,
    // With exact readings alone this is n·ln(RSS/n) and the correction, the usual form for least squares.
    aicc: aiccOfLikelihood(logLikelihood + (n / 2) * (1 + Math.log(2 * Math.PI)), n, parameters.length + 1),
  };
}

/** Mean of the standard normal beyond z: density over upper tail. */
function hazard(z: number): number {
  const tail = normalUpperTail(z);
  // Far out the tail runs out of numbers; there the hazard is z + 1/z.
  return tail > 1e-300 ? Math.exp(normalLogDensity(z)) / tail : z + 1 / z;
}

function workingValue({ y, lowerBound }: CurveReading, mean: number, sigma: number): { y: number; weight: number } {
  if (!lowerBound) return { y, weight: 1 };
  const z = (y - mean) / sigma;
  const rate = hazard(z);
  const weight = Math.max(rate * (rate - z), LEAST_WEIGHT);
  return { y: mean + (sigma * rate) / weight, weight };
}

/** Expected squared distance from the curve, given what the reading says. */
function expectedSquare({ y, lowerBound }: CurveReading, mean: number, sigma: number): number {
  if (!lowerBound) return (y - mean) ** 2;
  const z = (y - mean) / sigma;
  return sigma ** 2 * (1 + z * hazard(z));
}

function logLikelihoodOf({ y, lowerBound }: CurveReading, mean: number, sigma: number): number {
  const z = (y - mean) / sigma;
  return lowerBound ? Math.log(Math.max(normalUpperTail(z), Number.MIN_VALUE)) : normalLogDensity(z) - Math.log(sigma);
}

/** The fit with its spread put on the scatter that the likelihood found. */
function withSpread(fit: CurveFit, residualSd: number): CurveFit {
  const factor = fit.residualSd ? residualSd / fit.residualSd : 1;
  return {
    ...fit,
    residualSd: fit.residualSd === 0 ? 0 : residualSd,
    covariance: fit.covariance?.map((row) => row.map((entry) => entry * factor ** 2)) ?? null,
    standardErrors: fit.standardErrors.map((error) => (error === null ? null : error * factor)),
  };
}
