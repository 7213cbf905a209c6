import { describe, expect, it } from 'vitest';
import { intraclassCorrelation } from '../../../shared-lib/statistics/intraclass-correlation.ts';
import { cohenKappa, fleissKappa } from '../../../shared-lib/statistics/kappa.ts';
import reference from './agreement.json';

function tableOf(first: number[], second: number[], levels: number[]): number[][] {
  return levels.map((row) => levels.map((column) => first.filter((grade, i) => grade === row && second[i] === column).length));
}

describe('kappa', () => {
  const { table, kappa, ase, ci95, linear_weighted: linear } = reference.cohen_table;

  it('plain, against SAS (four decimals)', () => {
    const found = cohenKappa(table, 'none')!;
    expect(found.value).toBeCloseTo(kappa, 4);
    expect(found.standardError).toBeCloseTo(ase, 4);
    expect(found.low).toBeCloseTo(ci95[0]!, 4);
    expect(found.high).toBeCloseTo(ci95[1]!, 4);
  });

  it('linear weights, against SAS', () => {
    const found = cohenKappa(table, 'linear')!;
    expect(found.value).toBeCloseTo(linear.kappa, 4);
    expect(found.standardError).toBeCloseTo(linear.ase, 4);
    expect(found.low).toBeCloseTo(linear.ci95[0]!, 4);
    expect(found.high).toBeCloseTo(linear.ci95[1]!, 4);
  });

  it('anxiety ratings by rank among the grades that occur (R irr) and on the whole scale', () => {
    const { rater2, rater3, raters_2_3: ranked, raters_2_3_all_levels_1_6_by_value: whole } = reference.anxiety;
    const occurring = tableOf(rater2, rater3, [1, 2, 3, 4, 6]);
    expect(cohenKappa(occurring, 'none')!.value).toBeCloseTo(ranked.unweighted.kappa, 8);
    expect(cohenKappa(occurring, 'linear')!.value).toBeCloseTo(ranked.linear_equal.kappa, 7);
    expect(cohenKappa(occurring, 'quadratic')!.value).toBeCloseTo(ranked.quadratic_squared.kappa, 7);
    const scale = tableOf(rater2, rater3, [1, 2, 3, 4, 5, 6]);
    expect(cohenKappa(scale, 'linear')!.value).toBeCloseTo(whole.linear, 12);
    expect(cohenKappa(scale, 'quadratic')!.value).toBeCloseTo(whole.quadratic, 12);
  });

  it('of several appraisers (Fleiss’ example, three decimals)', () => {
    expect(fleissKappa(reference.fleiss_wikipedia.counts)!).toBeCloseTo(reference.fleiss_wikipedia.kappa, 3);
  });

  it('says nothing where one grade was given throughout', () => {
    expect(cohenKappa([[5, 0], [0, 0]], 'none')).toBeNull();
    expect(fleissKappa([[3, 0], [3, 0]])).toBeNull();
  });
});

describe('the intraclass correlation', () => {
  it('of six targets and four judges is 0.29, interval 0.02 to 0.76 (Shrout and Fleiss 1979, table 2; from memory)', () => {
    const ratings = [[9, 2, 5, 8], [6, 1, 3, 2], [8, 4, 6, 8], [7, 1, 2, 6], [10, 5, 6, 9], [6, 2, 4, 7]];
    const { value, low, high } = intraclassCorrelation(ratings)!;
    expect(value).toBeCloseTo(0.29, 2);
    expect(low!).toBeCloseTo(0.02, 2);
    expect(high!).toBeCloseTo(0.76, 2);
  });
});
