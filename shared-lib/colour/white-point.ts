import type { ReferenceIlluminant } from '../method/reference-colour.ts';
import { observerWeights } from './observer-weights.ts';
import type { Observer } from './observers.ts';
import { tabulated } from './observers.ts';
import type { Xyz } from './xyz.ts';

/** Illuminant C has no table here; its white points are those of ASTM E308, Table 5 (from memory). */
const whiteOfC: Record<Observer, Xyz> = { 2: [98.074, 100, 118.232], 10: [97.285, 100, 116.145] };

/** X, Y, Z of the perfect diffuser under an illuminant for an observer, Y = 100. */
export function whitePoint(illuminant: ReferenceIlluminant, observer: Observer): Xyz {
  return illuminant === 'C' ? whiteOfC[observer] : observerWeights(tabulated, illuminant, observer).white;
}
