import { describe, expect, it } from 'vitest';
import { kaplanMeier } from '../../../shared-lib/statistics/kaplan-meier.ts';
import reference from './kaplan-meier.json';
import { worstLre } from './lre.ts';

describe('the product-limit estimate against R (survfit)', () => {
  const arm = reference.leukemia_6mp;
  const events = arm.event6.map(Boolean);

  it('6-MP arm: survival, numbers at risk and both kinds of interval', () => {
    const byLog = kaplanMeier(arm.time6, events, 0.95, 'log');
    const byLogLog = kaplanMeier(arm.time6, events);
    expect(byLog.rows.map(({ time }) => time)).toEqual(arm.t);
    expect(byLog.rows.map(({ atRisk }) => atRisk)).toEqual(arm.nrisk);
    expect(byLog.rows.map((row) => row.events)).toEqual(arm.nev);
    expect(worstLre(byLog.rows.map(({ survival }) => survival), arm.S)).toBeGreaterThan(10);
    expect(worstLre(byLog.rows.map(({ low }) => low), arm.lo_log)).toBeGreaterThan(10);
    expect(worstLre(byLog.rows.map(({ high }) => high), arm.hi_log)).toBeGreaterThan(10);
    expect(worstLre(byLogLog.rows.map(({ low }) => low), arm.lo_loglog)).toBeGreaterThan(10);
    expect(worstLre(byLogLog.rows.map(({ high }) => high), arm.hi_loglog)).toBeGreaterThan(10);
    expect(byLog.median).toEqual({ value: arm.median, low: arm.median_lo, high: null });
  });

  it('placebo arm: nothing censored, the curve comes down to zero', () => {
    const { timeP, eventP } = arm;
    const { rows, median } = kaplanMeier(timeP, eventP.map(Boolean));
    const { t, S, median: expected } = reference.leukemia_placebo;
    expect(rows.map(({ time }) => time)).toEqual(t);
    expect(worstLre(rows.map(({ survival }) => survival), S)).toBeGreaterThan(10);
    expect(rows.at(-1)).toMatchObject({ survival: 0, low: null, high: null });
    expect(median.value).toBe(expected);
  });

  it('a 90 % log-log interval (values of survfit quoted in an open test suite)', () => {
    const { time, event, S, loglog90_low, loglog90_high } = reference.scipy_case5;
    const { rows } = kaplanMeier(time, event.map(Boolean), 0.9, 'log-log');
    expect(rows.length).toBe(S.length);
    // S is printed to three digits there.
    rows.forEach(({ survival }, i) => expect(Math.abs(survival - S[i]!)).toBeLessThan(6e-4));
    expect(worstLre(rows.map(({ low }) => low), loglog90_low)).toBeGreaterThan(10);
    expect(worstLre(rows.map(({ high }) => high), loglog90_high)).toBeGreaterThan(10);
  });
});
