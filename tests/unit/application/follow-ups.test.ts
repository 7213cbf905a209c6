import { describe, expect, it } from 'vitest';
import type { BenchSheetView } from '../../../shared-lib/notebook/views.ts';
import { testBench, type TestBench } from './open-application.ts';

/** Brackets about 36 + 8·e^(−0.05·days): 40 mN/m after ln 2 / 0.05 = 13.9 days. */
const DECAY = '0\t44\t45\n2\t43\t44\n4\t42\t43\n7\t41\t42\n10\t40\t41\n14\t39\t41\n21\t38\t39\n30\t37\t38\n45\t36\t37\n60\t36\t37';
/** Forces on 15 mm about 3·(1 − e^(−0.06·hours)), a hundredth up and down: 2.4 N after ln 5 / 0.06 = 26.8 hours. */
const BUILD = [1, 2, 4, 6, 8, 12, 16, 20, 24].map((hours, index) => `${hours}\t${(3 - 3 * Math.exp(-0.06 * hours) + (index % 2 ? 0.01 : -0.01)).toFixed(3)}\t15\ta`).join('\n');

async function finished(bench: TestBench, methodId: string, conditions: Record<string, string>, key: string, pasted: string): Promise<BenchSheetView> {
  const { test } = await bench.startTest(methodId);
  for (const [condition, typed] of Object.entries(conditions)) await bench.do('condition.enter', { testId: test.testId, key: condition, typed });
  await bench.do('readings.paste', { testId: test.testId, row: 'r1', key, pasted });
  return bench.do('test.finish', { testId: test.testId, remark: '' });
}

const due = async (bench: TestBench) => (await bench.do('today.get', {})).due;
const dayAfter = (date: string, days: number) => new Date(Date.parse(date) + days * 86_400_000).toISOString().slice(0, 10);

describe('what a finished decay test asks for', () => {
  const conditions = { requiredMNm: '40', treatedOn: '2026-02-27' };

  it('is due on the day of treatment and the days of testAgainBy', async () => {
    const bench = await testBench();
    const sheet = await finished(bench, 'treatment-decay', conditions, 'days', DECAY);
    const days = sheet.live!.result.results.testAgainBy!.value!;
    expect(days).toBeGreaterThan(7);
    expect(days).toBeLessThan(14);
    const [item, ...others] = await due(bench);
    expect(others).toEqual([]);
    expect(item).toMatchObject({ what: 'Test the treatment again: Q-1', dueOn: dayAfter('2026-02-27', Math.floor(days)), overdue: false, testId: sheet.test.testId });
    expect(item!.why).toMatch(/^Treated on 2026-02-27; by its decay it falls to 40\.0 mN\/m after 1\d[.\d]* d \(95 % interval/);
    bench.time = Date.parse(`${item!.dueOn}T23:59:59.000Z`);
    expect((await due(bench))[0]!.overdue).toBe(false);
    bench.time += 1000;
    expect((await due(bench))[0]!.overdue).toBe(true);
  });

  it('is settled by a later test of the treatment, not by any other', async () => {
    const bench = await testBench();
    await finished(bench, 'treatment-decay', conditions, 'days', DECAY);
    await bench.startTest('lamination-bond');
    await bench.startTest('test-fluids', 'Q-2');
    expect(await due(bench)).toHaveLength(1);
    const { sampleId } = (await bench.do('samples.list', { search: 'Q-1' })).samples[0]!;
    await bench.do('sample.retire', { sampleId, reason: 'Used up' });
    expect(await due(bench)).toEqual([]);
    await bench.do('sample.return', { sampleId, reason: 'A piece was found' });
    await bench.startTest('test-fluids');
    expect(await due(bench)).toEqual([]);
  });

  it('waits while the result no longer follows from the readings', async () => {
    const bench = await testBench();
    const { test } = await finished(bench, 'treatment-decay', conditions, 'days', DECAY);
    await bench.do('condition.enter', { testId: test.testId, key: 'treatedOn', typed: '2026-03-01', reason: 'Misread the label' });
    expect((await due(bench)).map(({ what }) => what)).toEqual(['Finish Treatment decay on Q-1 again']);
    const again = await bench.do('test.finish', { testId: test.testId, remark: '' });
    expect((await due(bench))[0]!.dueOn).toBe(dayAfter('2026-03-01', Math.floor(again.live!.result.results.testAgainBy!.value!)));
  });

  it('is nothing without the day of treatment, and that day must be one', async () => {
    const bench = await testBench();
    const { test } = await finished(bench, 'treatment-decay', { requiredMNm: '40' }, 'days', DECAY);
    expect(await due(bench)).toEqual([]);
    for (const typed of ['2026-02-30', '27.2.2026', 'Friday']) {
      const problem = await bench.refused('condition.enter', { testId: test.testId, key: 'treatedOn', typed });
      expect(problem).toMatchObject({ field: 'typed', value: typed, message: expect.stringContaining('year-month-day') });
    }
  });
});

describe('what a finished build-up test asks for', () => {
  it('is to check the bond on the day on which it should be strong enough', async () => {
    const bench = await testBench();
    const sheet = await finished(bench, 'bond-build', { requiredNPer15mm: '2.4', laminatedOn: '2026-03-01', stripWidthMm: '15' }, 'hours', BUILD);
    expect(Math.abs(sheet.live!.result.results.hoursUntilRequired!.value! - 26.8)).toBeLessThan(0.5);
    const [item, ...others] = await due(bench);
    expect(others).toEqual([]);
    // 26.8 hours after an unknown hour of the 1st: on the second day after it at the latest.
    expect(item).toMatchObject({ what: 'Check that the bond is strong enough: Q-1', dueOn: '2026-03-03', overdue: false, testId: sheet.test.testId });
    expect(item!.why).toMatch(/reaches 2\.40 N\/15 mm about 26\.\d+ h after lamination on 2026-03-01 \(95 % interval/);
    await bench.startTest('lamination-bond');
    expect(await due(bench)).toEqual([]);
  });

  it('is nothing when the test was finished on that day or later, for its strips have answered', async () => {
    const bench = await testBench();
    await finished(bench, 'bond-build', { requiredNPer15mm: '2.4', laminatedOn: '2026-02-28', stripWidthMm: '15' }, 'hours', BUILD);
    expect(await due(bench)).toEqual([]);
  });

  it('is nothing when the bond never gets there, for no day can be named', async () => {
    const bench = await testBench();
    await finished(bench, 'bond-build', { requiredNPer15mm: '5', laminatedOn: '2026-02-27', stripWidthMm: '15' }, 'hours', BUILD);
    expect(await due(bench)).toEqual([]);
  });
});
