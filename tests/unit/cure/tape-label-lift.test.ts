import { describe, expect, it } from 'vitest';
import { tapeLabelLiftMethod } from '../../../shared-lib/cure/tape-label-lift.method.ts';
import { bench } from '../colour/bench.ts';
import { refusal } from '../surface-energy/refusal.ts';

const run = (rows: Parameters<typeof bench>[0]) => tapeLabelLiftMethod.evaluate(bench(rows, { pulled: 'tape' }));

describe('tape-and-label lift', () => {
  it('mean, worst and exact shares', () => {
    const { results, notes } = run([{ liftedPct: 0, adhesiveSticks: 'yes' }, {}, { liftedPct: 10, adhesiveSticks: 'no' }, { liftedPct: 20 }]);
    // Mean 10, s = 10, t(0.975; 2) = 4.30265 (table): 10 ± 24.8, cut at 0.
    expect(results.liftedPct).toMatchObject({ low: 0, n: 3 });
    expect(results.liftedPct!.value).toBeCloseTo(10, 12);
    expect(results.liftedPct!.high).toBeCloseTo(34.841, 3);
    expect(results.worstPct!.value).toBe(20);
    expect(results.specimensLiftedPct!.value).toBeCloseTo(66.667, 3);
    expect(results.adhesiveDeadPct).toMatchObject({ value: 50, n: 2 });
    expect(notes.join(' ')).toContain('cannot tell poor cure from poor adhesion');
  });

  it('an interval stays within the whole', () => {
    expect(run([{ liftedPct: 100 }, { liftedPct: 95 }]).results.liftedPct!.high).toBe(100);
  });

  it('a tape that came off clean but dead is flagged: it never pulled', () => {
    expect(run([{}, { liftedPct: 0, adhesiveSticks: 'no' }]).flags.map(({ code, where }) => [code, where])).toEqual([['clean-but-dead', 'rows[1].adhesiveSticks']]);
  });

  it('refuses more than all, and names the cell', () => {
    expect(refusal(() => run([{}, { liftedPct: 101 }])).field).toBe('rows[1].liftedPct');
    expect(refusal(() => run([{ adhesiveSticks: 'yes' }])).field).toBe('rows[0].liftedPct');
    expect(refusal(() => run([{}])).field).toBe('rows[0].liftedPct');
  });
});
