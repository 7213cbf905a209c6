import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { runCalculation } from '../../../shared-lib/calculation/calculation.ts';
import { InputError } from '../../../shared-lib/calculation/input-error.ts';
import { colourDifferenceCalculation } from '../../../shared-lib/colour/colour-difference.calculation.ts';
import { deltaE2000 } from '../../../shared-lib/colour/delta-e-2000.ts';
import { deltaE94 } from '../../../shared-lib/colour/delta-e-94.ts';
import { deltaEab } from '../../../shared-lib/colour/delta-e-ab.ts';
import { deltaECmc } from '../../../shared-lib/colour/delta-e-cmc.ts';
import { hueDeg, type Lab } from '../../../shared-lib/colour/lab.ts';
import { labDifference } from '../../../shared-lib/colour/lab-difference.ts';

const channel = fc.double({ min: -120, max: 120, noNaN: true });
const lab: fc.Arbitrary<Lab> = fc.tuple(fc.double({ min: 0, max: 100, noNaN: true }), channel, channel);

function refusal(input: unknown): InputError {
  try {
    runCalculation(colourDifferenceCalculation, input);
  } catch (error) {
    if (error instanceof InputError) return error;
    throw error;
  }
  throw new Error('was not refused');
}

describe('colour-difference', () => {
  it('gives every difference of one pair, signed as sample minus reference', () => {
    const { results } = runCalculation(colourDifferenceCalculation, { reference: [50, 3, 4], sample: [48, 6, 8] });
    // By hand: ΔE*ab² = 4 + 9 + 16; C* goes from 5 to 10 on the same hue.
    expect(results.deltaEab!.value).toBeCloseTo(Math.sqrt(29), 12);
    expect(results.deltaL!.value).toBe(-2);
    expect(results.deltaC!.value).toBeCloseTo(5, 12);
    expect(results.deltaH!.value).toBeCloseTo(0, 12);
    expect(results.deltaE94!.value).toBeCloseTo(Math.hypot(2, 5 / (1 + 0.045 * 5)), 12);
  });

  it('takes other CMC weights', () => {
    const pair = { reference: [60, 10, 10], sample: [55, 10, 10] };
    const at = (cmc?: { l: number; c: number }) =>
      runCalculation(colourDifferenceCalculation, cmc ? { ...pair, cmc } : pair).results.deltaECMC!.value!;
    expect(at({ l: 1, c: 1 })).toBeCloseTo(2 * at(), 12);
  });

  it('signs ΔH* by the sense of rotation, across 0° too', () => {
    expect(labDifference([50, 10, -1], [50, 10, 1]).deltaH).toBeGreaterThan(0);
    expect(labDifference([50, 10, 1], [50, 10, -1]).deltaH).toBeLessThan(0);
  });

  it('keeps a small ΔH* of a saturated colour', () => {
    // One ten-millionth of a radian at C* 100 is ΔH* 1e-5; √(ΔE² − ΔC²) would lose it.
    const angle = 1e-7;
    const { deltaH } = labDifference([50, 100, 0], [50, 100 * Math.cos(angle), 100 * Math.sin(angle)]);
    expect(deltaH).toBeCloseTo(1e-5, 12);
  });

  it('gives a neutral colour the hue 0 and no ΔH*', () => {
    expect(hueDeg(0, 0)).toBe(0);
    expect(labDifference([50, 0, 0], [50, 3, 4]).deltaH).toBe(0);
  });

  it.each([
    ['an L* above the scale', { reference: [151, 0, 0], sample: [50, 0, 0] }, 'reference[0]', 151],
    ['a negative L*', { reference: [50, 0, 0], sample: [-1, 0, 0] }, 'sample[0]', -1],
    ['an a* beyond any colour', { reference: [50, 301, 0], sample: [50, 0, 0] }, 'reference[1]', 301],
    ['two coordinates', { reference: [50, 0], sample: [50, 0, 0] }, 'reference', [50, 0]],
    ['a missing sample', { reference: [50, 0, 0] }, 'sample', null],
    ['a weight of zero', { reference: [50, 0, 0], sample: [50, 0, 0], cmc: { l: 0, c: 1 } }, 'cmc.l', 0],
    ['text for a number', { reference: [50, 0, '0'], sample: [50, 0, 0] }, 'reference[2]', '0'],
    ['NaN', { reference: [50, 0, Number.NaN], sample: [50, 0, 0] }, 'reference[2]', Number.NaN],
  ])('refuses %s', (_what, input, field, value) => {
    const error = refusal(input);
    expect(error.field.startsWith(field)).toBe(true);
    if (error.field === field) expect(error.value).toEqual(value);
    expect(error.message.length).toBeGreaterThan(10);
  });

  it('is zero for equal colours and never negative or not a number', () => {
    fc.assert(
      fc.property(lab, lab, (one, two) => {
        const all = [deltaEab, deltaE94, deltaE2000, (r: Lab, s: Lab) => deltaECmc(r, s, { l: 2, c: 1 })];
        for (const difference of all) {
          expect(difference(one, one)).toBe(0);
          expect(difference(one, two)).toBeGreaterThanOrEqual(0);
        }
      }),
    );
  });

  it('splits ΔE*ab into ΔL*, ΔC* and ΔH*', () => {
    fc.assert(
      fc.property(lab, lab, (one, two) => {
        const { deltaL, deltaC, deltaH } = labDifference(one, two);
        expect(Math.hypot(deltaL, deltaC, deltaH)).toBeCloseTo(deltaEab(one, two), 6);
      }),
    );
  });

  it('gives the same ΔE*ab and ΔE00 with the colours exchanged', () => {
    fc.assert(
      fc.property(lab, lab, (one, two) => {
        expect(deltaEab(one, two)).toBeCloseTo(deltaEab(two, one), 10);
        expect(deltaE2000(one, two)).toBeCloseTo(deltaE2000(two, one), 8);
      }),
    );
  });
});
