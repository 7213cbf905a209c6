import { clopperPearson } from '../statistics/clopper-pearson.ts';
import { atMostFailures } from '../statistics/pass-rate.ts';

/** Chance of picking the odd one of three by guessing. */
const GUESS = 1 / 3;

/**
 * Probability that so many or more pick the odd one of three although nobody can tell: exact binomial with chance 1/3.
 * Source: ISO 4120.
 */
export function trianglePValue(assessors: number, correct: number): number {
  // At least `correct` right is at most the others wrong.
  return atMostFailures(assessors - correct, assessors, 1 - GUESS);
}

/** Fewest right answers that differ from guessing at `alpha`; `null` where even all of them would not. */
export function minimumCorrect(assessors: number, alpha: number): number | null {
  let correct = assessors + 1;
  while (correct > 0 && trianglePValue(assessors, correct - 1) <= alpha) correct -= 1;
  return correct > assessors ? null : correct;
}

/**
 * Share of assessors who truly tell the odd one, the lucky guesses taken out: 1.5·(right share) − 0.5, not below 0, with
 * the exact interval of the right share (C. J. Clopper, E. S. Pearson, Biometrika 26 (1934) 404). Source: ISO 4120.
 */
export function discriminators(assessors: number, correct: number, level: number): { value: number; low: number; high: number } {
  const { low, high } = clopperPearson(correct, assessors, level);
  const withoutGuesses = (share: number) => Math.max(0, (share - GUESS) / (1 - GUESS));
  return { value: withoutGuesses(correct / assessors), low: withoutGuesses(low), high: withoutGuesses(high) };
}
