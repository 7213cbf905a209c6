import { describe, expect, test } from 'vitest';
import { runCalculation } from '../../../shared-lib/calculation/calculation.ts';
import { blockingLoadCalculation } from '../../../shared-lib/mechanical/blocking-load.calculation.ts';
import { frictionCalculation } from '../../../shared-lib/mechanical/friction.calculation.ts';

const friction = (input: unknown) => runCalculation(frictionCalculation, input);
const blocking = (input: unknown) => runCalculation(blockingLoadCalculation, input);

/* μ = F/(m·g₀) by definition; the case in grams-force is the usual worked example, recomputed in SI. */
describe('friction, ASTM D1894 and ISO 8295', () => {
  test('60 gf start and 40 gf mean on a 200 g sled: 0.300 and 0.200', () => {
    const { results } = friction({ sledMassG: 200, staticN: 0.588399, kineticN: 0.392266 });
    expect(results.static!.value).toBeCloseTo(0.3, 9);
    expect(results.kinetic!.value).toBeCloseTo(0.2, 9);
  });

  /* Exact mathematics; inclined plane of the TAPPI T 815 type (from memory): static coefficient = tan θ. */
  test.each([
    [10, 0.1763],
    [15, 0.2679],
    [20, 0.364],
    [25, 0.4663],
    [30, 0.5774],
    [45, 1],
  ])('the sled slides at %i°: %f', (angleDeg, expected) => {
    expect(friction({ angleDeg }).results.static!.value).toBeCloseTo(expected, 4);
  });

  /* ISO 8295 (from memory): kinetic force over the first 60 mm after the peak; D1894: first maximum, then the mean of sliding. */
  test('a trace gives its first peak and the mean after it', () => {
    const points = Array.from({ length: 1301 }, (_, index): [number, number] => {
      const mm = index / 10;
      return [mm, mm <= 2 ? 0.3 * mm : mm <= 4 ? 0.6 - 0.1 * (mm - 2) : mm <= 62 ? 0.4 : 0.5];
    });
    const normalN = 0.2 * 9.80665;
    const iso = friction({ sledMassG: 200, points, travelMm: 60 }).results;
    expect(iso.static!.value).toBeCloseTo(0.6 / normalN, 9);
    expect(iso.kinetic!.value).toBeCloseTo(0.4035 / normalN, 3);
    // To 130 mm: 2 mm at a mean of 0.5, 58 mm at 0.4, 68 mm at 0.5 N.
    expect(friction({ sledMassG: 200, points }).results.kinetic!.value).toBeCloseTo((2 * 0.5 + 58 * 0.4 + 68 * 0.5) / 128 / normalN, 3);
  });
});

/* ASTM D3354-21, abstract: load in grams that separates layers over 100 cm², limit 200 g. */
describe('blocking load', () => {
  test('200 g over 100 cm² are 196.133 Pa', () => {
    expect(blocking({ specimens: [{ loadG: 200, separated: true }] }).results.pressure!.value).toBeCloseTo(196.133, 9);
    expect(blocking({ specimens: [{ loadG: 1 }] }).results.pressure!.value).toBeCloseTo(0.980665, 12);
  });

  test('not separated at 200 g is reported as more than 200 g', () => {
    const { results } = blocking({ specimens: [{ loadG: 200, separated: false }] });
    expect(results.load).toMatchObject({ value: 200, low: 200, high: null, bound: 'at-least' });
    expect(results.maximum).toMatchObject({ value: 200, bound: 'at-least' });
  });
});
