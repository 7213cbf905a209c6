import { expect, it } from 'vitest';
import { absorbedShare } from '../../../shared-lib/colour/absorbed-share.ts';
import { dotArea } from '../../../shared-lib/colour/dot-area.ts';

it('a density of 1 takes nine tenths of the light, one of 2 all but a hundredth', () => {
  expect(absorbedShare(1)).toBeCloseTo(0.9, 15);
  expect(absorbedShare(2)).toBeCloseTo(0.99, 15);
});

it('keeps its digits for thin inks: ln 10 · D, and a dot area that is a plain quotient', () => {
  expect(absorbedShare(1e-18) / (Math.LN10 * 1e-18)).toBeCloseTo(1, 14);
  expect(dotArea(1e-18, 5e-19)).toBeCloseTo(0.5, 14);
});

it('a large Yule–Nielsen factor makes the dot area the quotient of the densities (limit of Murray–Davies/Yule–Nielsen)', () => {
  expect(dotArea(1.5, 0.3, 1e15)).toBeCloseTo(0.2, 14);
});
