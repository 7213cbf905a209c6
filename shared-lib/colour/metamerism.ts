import { deltaEab } from './delta-e-ab.ts';
import { labFromXyz, type Xyz } from './xyz.ts';

/** How the sample is brought to match: each of X, Y, Z by a factor or by a shift. */
export type MatchCorrection = 'multiplicative' | 'additive';

/** Tristimulus values of standard and sample under one light, with its white point. */
export interface PairUnderLight {
  xyz: readonly [Xyz, Xyz];
  white: Xyz;
}

/**
 * Special index of metamerism: ΔE*ab under the test light after the sample has been corrected, by what makes it match
 * under the reference light. `null` where a factor cannot be given (a zero under the reference light).
 * Source: CIE 015 (from memory).
 */
export function metamerismIndex(reference: PairUnderLight, test: PairUnderLight, correction: MatchCorrection): number | null {
  const [standard, sample] = reference.xyz;
  if (correction === 'multiplicative' && sample.some((value) => value <= 0)) return null;
  const corrected = test.xyz[1].map((value, place) =>
    correction === 'multiplicative' ? (value * standard[place]!) / sample[place]! : value + standard[place]! - sample[place]!,
  ) as [number, number, number];
  return deltaEab(labFromXyz(test.xyz[0], test.white), labFromXyz(corrected, test.white));
}
