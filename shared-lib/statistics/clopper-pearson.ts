import { betaQuantile } from './distributions.ts';

/**
 * Exact interval of a proportion: never less than its level, whatever the true share.
 * @throws RangeError unless both are whole and 0 ≤ successes ≤ trials, trials ≥ 1.
 * Source: C. J. Clopper, E. S. Pearson, Biometrika 26 (1934) 404.
 */
export function clopperPearson(successes: number, trials: number, level = 0.95): { low: number; high: number } {
  if (!Number.isInteger(successes) || !Number.isInteger(trials) || trials < 1 || successes < 0 || successes > trials) {
    throw new RangeError(`A share needs whole counts with 0 ≤ successes ≤ trials, not ${successes} of ${trials}.`);
  }
  const tail = (1 - level) / 2;
  return {
    low: successes === 0 ? 0 : betaQuantile(tail, successes, trials - successes + 1),
    high: successes === trials ? 1 : betaQuantile(1 - tail, successes + 1, trials - successes),
  };
}
