import { describe, expect, it } from 'vitest';
import { runCalculation } from '../../../shared-lib/calculation/calculation.ts';
import { gaugeAnova } from '../../../shared-lib/statistics/gauge-anova.ts';
import { measurementStudyCalculation } from '../../../shared-lib/statistics/measurement-study.calculation.ts';
import reference from './gauge-study.json';
import { lre, worstLre } from './lre.ts';

const { A, B, C } = reference.data_by_appraiser_part;
const readings = Object.entries({ A, B, C }).flatMap(([appraiser, parts]) =>
  parts.flatMap((trials, part) => trials.map((value, trial) => ({ appraiser, part: part + 1, trial: trial + 1, value }))),
);
const run = (options: object = {}) => runCalculation(measurementStudyCalculation, { readings, ...options });

describe('the published study of ten parts, three appraisers and three trials', () => {
  const { anova, anova_pooled_interaction: pooled, anova_interaction_kept: kept, average_range_method: range } = reference;

  it('analysis of variance', () => {
    const found = gaugeAnova([A, B, C]);
    expect(worstLre([found.appraiser, found.part, found.interaction, found.repeat].map(({ sumOfSquares }) => sumOfSquares), [anova.SS_operator, anova.SS_part, anova.SS_interaction, anova.SS_repeat])).toBeGreaterThan(10);
    expect([found.appraiser, found.part, found.interaction, found.repeat].map(({ degreesOfFreedom }) => degreesOfFreedom)).toEqual(anova.df.slice(0, 4));
    expect(lre(found.interaction.f, anova.F_interaction)).toBeGreaterThan(9);
    expect(lre(found.interaction.p, anova.p_interaction)).toBeGreaterThan(9);
  });

  it.each([
    ['pooled', 'auto', pooled],
    ['kept', 'never', kept],
  ] as const)('components, interaction %s', (_, pooling, expected) => {
    const { results } = run({ pooling });
    expect(worstLre([results.repeatability, results.reproducibility, results.gauge, results.part, results.total, results.gaugePct].map((value) => value!.value), [expected.EV, expected.AV, expected.GRR, expected.PV, expected.TV, expected.pct_GRR_TV])).toBeGreaterThan(9);
    expect(results.distinctCategories!.value).toBe(expected.ndc_int);
    for (const name of ['repeatability', 'reproducibility', 'gauge', 'part', 'total', 'gaugePct']) {
      const { value, low, high } = results[name]!;
      expect(low!, name).toBeLessThan(value!);
      expect(high!, name).toBeGreaterThan(value!);
    }
  });

  it('average and range (printed constants have four digits: 2e-4)', () => {
    const { results } = run({ method: 'average-range' });
    const found = [results.repeatability, results.reproducibility, results.gauge, results.part, results.total].map((value) => value!.value);
    [range.EV, range.AV, range.GRR, range.PV, range.TV].forEach((expected, i) => expect(Math.abs(found[i]! / expected - 1)).toBeLessThan(2e-4));
    expect(results.distinctCategories!.value).toBe(Math.floor(range.ndc));
  });

  it('repeatability has its chi-square interval', () => {
    // s²·ν/χ² with ν = 78: χ²(0.975; 78) = 104.316, χ²(0.025; 78) = 55.466 (handbook tables).
    const { repeatability } = run().results;
    expect(repeatability!.low).toBeCloseTo(pooled.EV * Math.sqrt(78 / 104.316), 5);
    expect(repeatability!.high).toBeCloseTo(pooled.EV * Math.sqrt(78 / 55.466), 5);
  });
});
