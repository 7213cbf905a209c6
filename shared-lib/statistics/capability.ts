import { chiSquareQuantile, normalQuantile } from './distributions.ts';

export interface CapabilityIndex {
  value: number;
  low: number;
  high: number;
}

/**
 * (upper − lower)/6σ with its chi-square interval.
 * @param df degrees of freedom of sigma.
 * Source: D. C. Montgomery, Introduction to Statistical Quality Control, 6th ed. (2009), 8.3.
 */
export function spreadIndex(lower: number, upper: number, sigma: number, df: number, level: number): CapabilityIndex {
  const value = (upper - lower) / (6 * sigma);
  const at = (p: number) => value * Math.sqrt(chiSquareQuantile(p, df) / df);
  return { value, low: at((1 - level) / 2), high: at((1 + level) / 2) };
}

/**
 * Distance of the mean from the nearer limit in 3σ, with Bissell's interval; one limit may be absent.
 * @param n readings the mean stands on.
 * Source: A. F. Bissell, Appl. Stat. 39 (1990) 331.
 */
export function nearerIndex(lower: number | null, upper: number | null, mean: number, sigma: number, n: number, df: number, level: number): CapabilityIndex {
  const value = Math.min(lower === null ? Infinity : (mean - lower) / (3 * sigma), upper === null ? Infinity : (upper - mean) / (3 * sigma));
  const reach = normalQuantile((1 + level) / 2) * Math.sqrt(1 / (9 * n) + (value * value) / (2 * df));
  return { value, low: value - reach, high: value + reach };
}

/**
 * (upper − lower)/6τ, τ² the mean square about the target, with the chi-square interval of Boyles.
 * Source: R. A. Boyles, J. Qual. Technol. 23 (1991) 17.
 */
export function targetIndex(lower: number, upper: number, target: number, mean: number, sigma: number, n: number, level: number): CapabilityIndex {
  const offset = (mean - target) / sigma;
  const value = (upper - lower) / (6 * sigma * Math.sqrt(1 + offset * offset));
  const df = (n * (1 + offset * offset) ** 2) / (1 + 2 * offset * offset);
  const at = (p: number) => value * Math.sqrt(chiSquareQuantile(p, df) / df);
  return { value, low: at((1 - level) / 2), high: at((1 + level) / 2) };
}
