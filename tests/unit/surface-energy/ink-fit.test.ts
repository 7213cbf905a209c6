import { describe, expect, it } from 'vitest';
import { runCalculation } from '../../../shared-lib/calculation/calculation.ts';
import { inkFitCalculation } from '../../../shared-lib/surface-energy/ink-fit.calculation.ts';
import { refusal } from './refusal.ts';

const run = (input: unknown) => runCalculation(inkFitCalculation, input);

describe('ink fit', () => {
  it('by parts: geometric mean, by hand', () => {
    // 2(√(36·16) + √(4·9)) = 2(24 + 6) = 60
    const { results } = run({ film: { dispersiveMNm: 36, polarMNm: 4 }, ink: { dispersiveMNm: 16, polarMNm: 9 } });
    expect(results).toMatchObject({
      workOfAdhesion: { value: 60 },
      interfacialTension: { value: 5 },
      spreadingCoefficient: { value: 10 },
      margin: { value: 15 },
    });
  });

  it('an ink like the film has no interface: work of adhesion is twice its tension', () => {
    for (const same of [{ dispersiveMNm: 25, polarMNm: 9 }, { totalMNm: 34 }]) {
      const { results } = run({ film: same, ink: same });
      expect(results.workOfAdhesion!.value).toBeCloseTo(68, 9);
      expect(results.interfacialTension!.value).toBeCloseTo(0, 9);
      expect(results.spreadingCoefficient!.value).toBeCloseTo(0, 9);
    }
  });

  it('by totals: the equation of state, by hand and the same both ways round', () => {
    // 2√(40·22.5) e^(−0.0001247·17.5²) = 60 · e^(−0.038189)
    const { results, notes } = run({ film: { totalMNm: 40 }, ink: { totalMNm: 22.5 } });
    expect(results.workOfAdhesion!.value).toBeCloseTo(60 * Math.exp(-0.0001247 * 306.25), 9);
    expect(run({ film: { totalMNm: 22.5 }, ink: { totalMNm: 40 } }).results.workOfAdhesion!.value).toBeCloseTo(results.workOfAdhesion!.value!, 9);
    expect(notes.join(' ')).toContain('equation of state');
  });

  it('flags a margin below the usual 10 mN/m and an ink that does not spread', () => {
    const codes = (film: number, ink: number) => run({ film: { totalMNm: film }, ink: { totalMNm: ink } }).flags.map((flag) => flag.code);
    expect(codes(40, 30)).toEqual([]);
    expect(codes(40, 31)).toEqual(['margin-below-usual']);
    expect(codes(30, 40)).toEqual(['margin-below-usual', 'does-not-spread']);
  });

  it.each([
    [{ film: {}, ink: { totalMNm: 30 } }, 'film.totalMNm'],
    [{ film: { totalMNm: 40 }, ink: { polarMNm: 3 } }, 'ink.dispersiveMNm'],
    [{ film: { totalMNm: 40 }, ink: { dispersiveMNm: 20, polarMNm: 5, totalMNm: 30 } }, 'ink.totalMNm'],
    [{ film: { totalMNm: 40 }, ink: { dispersiveMNm: 50, totalMNm: 30 } }, 'ink.totalMNm'],
    [{ film: { totalMNm: -4 }, ink: { totalMNm: 30 } }, 'film.totalMNm'],
  ])('refuses %j', (input, field) => {
    expect(refusal(() => run(input)).field).toBe(field);
  });
});
