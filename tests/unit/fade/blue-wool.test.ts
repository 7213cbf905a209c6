import { describe, expect, it } from 'vitest';
import { outOfOrder, rateByBlueWool } from '../../../shared-lib/fade/blue-wool.ts';

/** Neutral-step ΔEF of grades 2, 3, 4 and 4-5. */
const references = [
  { reference: 2, deltaEF: 6.8 },
  { reference: 3, deltaEF: 3.4 },
  { reference: 4, deltaEF: 1.7 },
  { reference: 5, deltaEF: 0.85 },
];

describe('rateByBlueWool', () => {
  it.each([
    ['as much as reference 3', 3.5, { kind: 'equal', reference: 3 }],
    ['between 3 and 4', 2.55, { kind: 'between', low: 3, high: 4 }],
    ['more than any', 13.6, { kind: 'more', reference: 2 }],
    ['less than any', 0, { kind: 'less', reference: 5 }],
  ])('%s', (_what, deltaEF, rating) => {
    expect(rateByBlueWool(deltaEF, references)).toEqual(rating);
    expect(rateByBlueWool(deltaEF, [...references].reverse())).toEqual(rating);
  });

  it('says between where two references changed as much', () => {
    expect(rateByBlueWool(3.4, [{ reference: 3, deltaEF: 3.5 }, { reference: 4, deltaEF: 3.3 }])).toEqual({ kind: 'between', low: 3, high: 4 });
  });

  it('finds references that changed against their order', () => {
    expect(outOfOrder(references)).toEqual([]);
    expect(outOfOrder([{ reference: 4, deltaEF: 3 }, { reference: 3, deltaEF: 2 }])).toHaveLength(1);
  });
});
