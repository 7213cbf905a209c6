import { describe, expect, it } from 'vitest';
import { twoFactorAnova } from '../../../shared-lib/statistics/two-factor-anova.ts';
import reference from './analysis-of-variance.json';
import { lre, worstLre } from './lre.ts';

function readingsOf({ breaks, wool, tension }: { breaks: number[]; wool: string[]; tension: string[] }) {
  return breaks.map((value, i) => ({ a: wool[i]!, b: tension[i]!, value }));
}

describe('two factors against R 4.2.2', () => {
  it('warp breaks, balanced', () => {
    const { SS, df, F, p, ...data } = reference.two_way.warpbreaks;
    for (const type of ['II', 'III'] as const) {
      const { a, b, interaction, residual, balanced } = twoFactorAnova(readingsOf(data), type);
      expect(balanced).toBe(true);
      expect(worstLre([a, b, interaction!, residual].map((term) => term.sumOfSquares), SS)).toBeGreaterThan(10);
      expect([a, b, interaction!, residual].map((term) => term.degreesOfFreedom)).toEqual(df);
      expect(worstLre([a.f, b.f, interaction!.f], F.slice(0, 3) as number[])).toBeGreaterThan(10);
      expect(worstLre([a.p, b.p, interaction!.p], p.slice(0, 3) as number[])).toBeGreaterThan(10);
    }
  });

  it('warp breaks, unbalanced: types II and III', () => {
    const data = reference.two_way.warpbreaks_unbalanced;
    const two = twoFactorAnova(readingsOf(data), 'II');
    expect(two.balanced).toBe(false);
    expect(worstLre([two.a, two.b, two.interaction!, two.residual].map((term) => term.sumOfSquares), data.typeII_SS_wool_tension_int_resid)).toBeGreaterThan(9);
    const three = twoFactorAnova(readingsOf(data), 'III');
    expect(worstLre([three.a, three.b, three.interaction!].map((term) => term.sumOfSquares), data.typeIII_SS_wool_tension_int)).toBeGreaterThan(9);
    expect(worstLre([three.a.f, three.b.f, three.interaction!.f], data.typeIII_F)).toBeGreaterThan(9);
    expect(worstLre([three.a.p, three.b.p, three.interaction!.p], data.typeIII_p)).toBeGreaterThan(9);
    // The term entered second in type I is the same as in type II.
    expect(lre(two.b.sumOfSquares, data.typeI_SS[1]!)).toBeGreaterThan(9);
  });
});
