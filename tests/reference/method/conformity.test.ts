import { describe, expect, it } from 'vitest';
import { runCalculation } from '../../../shared-lib/calculation/calculation.ts';
import { verdictCalculation } from '../../../shared-lib/method/verdict.calculation.ts';

/** z of a two-sided 95 % interval: Abramowitz & Stegun, Table 26.5. */
const z975 = 1.959963984540054;

function probability(value: number, standardUncertainty: number, limits: { lowerLimit?: number; upperLimit?: number }): number {
  const half = z975 * standardUncertainty;
  const { results } = runCalculation(verdictCalculation, {
    value,
    low: value - half,
    high: value + half,
    rule: 'guarded',
    ...limits,
  });
  return results.probability!.value!;
}

/** Area of the standard normal between two points by Simpson's rule: independent of the distribution library. */
function normalArea(from: number, to: number): number {
  const steps = 20_000;
  const width = (to - from) / steps;
  const density = (x: number) => Math.exp(-x * x / 2) / Math.sqrt(2 * Math.PI);
  let sum = density(from) + density(to);
  for (let i = 1; i < steps; i++) sum += density(from + i * width) * (i % 2 === 1 ? 4 : 2);
  return (sum * width) / 3;
}

describe('conformance probability: worked examples of JCGM 106:2012, 7.3–7.4, from memory', () => {
  it('breakdown voltage −5.47 V, u 0.05 V, at most −5.40 V: Φ(1.4), printed as 0.919', () => {
    const p = probability(-5.47, 0.05, { upperLimit: -5.4 });
    expect(p).toBeCloseTo(normalArea(-12, 1.4), 9);
    expect(p).toBeCloseTo(0.919, 3);
  });

  it('burst pressure 509.7 kPa, u 8.6 kPa, at least 490 kPa: Φ(2.29), printed as 0.989', () => {
    const p = probability(509.7, 8.6, { lowerLimit: 490 });
    expect(p).toBeCloseTo(normalArea(-(509.7 - 490) / 8.6, 12), 9);
    expect(p).toBeCloseTo(0.989, 3);
  });

  it('viscosity 13.6 mm²/s, u 1.8 mm²/s, between 12.5 and 16.3 mm²/s: printed as 0.66', () => {
    const p = probability(13.6, 1.8, { lowerLimit: 12.5, upperLimit: 16.3 });
    expect(p).toBeCloseTo(normalArea((12.5 - 13.6) / 1.8, (16.3 - 13.6) / 1.8), 9);
    expect(p).toBeCloseTo(0.66, 2);
  });
});

describe("conformance probability with Student's t", () => {
  it('one degree of freedom is the Cauchy distribution: 1/2 + arctan(t)/π', () => {
    // n = 2: t(0.975; 1) = 12.7062 (t tables). Interval 10 ± 12.7062·2 has the scale 2; the limit lies 3 below.
    const { results } = runCalculation(verdictCalculation, {
      value: 10,
      low: 10 - 12.706204736 * 2,
      high: 10 + 12.706204736 * 2,
      n: 2,
      lowerLimit: 7,
      rule: 'guarded',
    });
    expect(results.probability!.value).toBeCloseTo(0.5 + Math.atan(1.5) / Math.PI, 8);
  });

  it('two degrees of freedom: 1/2 + t/(2√(2 + t²))', () => {
    // t(0.975; 2) = 4.302652730 (t tables).
    const { results } = runCalculation(verdictCalculation, {
      value: 0,
      low: -4.30265273,
      high: 4.30265273,
      n: 3,
      upperLimit: 1,
      rule: 'guarded',
    });
    expect(results.probability!.value).toBeCloseTo(0.5 + 1 / (2 * Math.sqrt(3)), 8);
  });
});
