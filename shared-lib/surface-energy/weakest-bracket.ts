import type { Bracket } from './bracket.ts';

/**
 * The bracket of the lowest of several wetting tensions: it lies above the lowest low end and below the lowest high end.
 * An open low end anywhere leaves the result open below; only high ends open everywhere leave it open above.
 */
export function weakestBracket(brackets: readonly Bracket[]): Bracket {
  const lows = brackets.map((bracket) => bracket.low);
  const highs = brackets.map((bracket) => bracket.high).filter((high) => high !== null);
  return {
    low: lows.includes(null) ? null : Math.min(...(lows as number[])),
    high: highs.length === 0 ? null : Math.min(...highs),
  };
}
