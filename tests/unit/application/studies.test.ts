import { describe, expect, it } from 'vitest';
import { testBench, type TestBench } from './open-application.ts';

const study = { methodId: 'lamination-bond', property: 'mean', remark: '' };

/** Parts far apart, two persons who differ by 0.3 N/15 mm, readings that repeat to 0.02. */
const readings = (bias: number) =>
  [2, 2.6, 3.2, 3.8, 4.4].flatMap((strength, part) =>
    ['IR', 'TV'].flatMap((appraiser, person) =>
      [0, 1].map((again) => ({ part: `${part + 1}`, appraiser, trial: `${again + 1}`, value: strength + bias * person + 0.02 * (again === part % 2 ? 1 : -1) })),
    ),
  );

async function bondTest(bench: TestBench, forces: number[], lower: number, code = 'Q-1'): Promise<string> {
  const { test } = await bench.startTest('lamination-bond', code);
  await bench.do('test.setLimits', { testId: test.testId, limits: [{ property: 'mean', lower, upper: null, source: 'customer' }], rule: 'guarded', reason: 'agreed anew' });
  await bench.do('readings.paste', { testId: test.testId, row: 'r1', key: 'forceN', pasted: forces.map((force) => `${force}\t\ta`).join('\n') });
  return test.testId;
}

const meanLine = async (bench: TestBench, testId: string) => (await bench.do('test.get', { testId })).live!.lines.find(({ key }) => key === 'mean')!;

describe('a measurement study', () => {
  it('is kept with its readings, its result and its method', async () => {
    const bench = await testBench();
    const view = await bench.do('study.record', { ...study, readings: readings(0.3), remark: 'six traces' });
    expect(view).toMatchObject({ methodTitle: 'Lamination bond', title: 'Mean bond strength', unit: 'N/15 mm', kind: 'number', parts: 5, appraisers: ['IR', 'TV'], readings: 20, inUse: true, recordedBy: 'Imke Rasmund' });
    // The persons differ by 0.3, so their variance is near 0.3²/2: s ≈ 0.21, and repeatability near 0.02.
    expect(view.result.results.reproducibility!.value).toBeCloseTo(0.3 / Math.SQRT2, 2);
    expect(view.text).toMatch(/^gauge s 0\.2\d N\/15 mm, \d+ % of the spread, 2026-03-02$/);
    const again = await bench.do('study.record', { ...study, readings: readings(0) });
    expect((await bench.do('studies.list', {})).map(({ studyId, inUse }) => [studyId, inUse])).toEqual([[again.studyId, true], [view.studyId, false]]);
    expect(await bench.do('studies.list', { methodId: 'test-fluids' })).toEqual([]);
    expect((await bench.do('study.get', { studyId: view.studyId })).values).toHaveLength(20);
    expect(await bench.do('record.verify', {})).toMatchObject({ intact: true });
  });

  it('refuses a grade outside its scale, and names the reading', async () => {
    const bench = await testBench();
    const grades = readings(0).map((reading, index) => ({ ...reading, value: index === 6 ? 7 : 3 }));
    expect(await bench.refused('study.record', { methodId: 'light-exposure', property: 'greyScale', remark: '', readings: grades })).toMatchObject({
      field: 'readings[6].value',
      message: 'Part 2, TV, reading 1: Grey scale at the last exposure is graded from 1 to 5; 7 is outside that scale.',
    });
  });

  it('counts in the verdict of tests that are running and later ones, not of one finished before', async () => {
    const bench = await testBench();
    const before = await bondTest(bench, [3, 3.02, 2.98, 3.01, 2.99], 2.8);
    expect(await meanLine(bench, before)).toMatchObject({ verdict: { verdict: 'meets' }, studyText: '' });
    await bench.do('test.finish', { testId: before, remark: '' });
    const running = await bondTest(bench, [3, 3.02, 2.98, 3.01, 2.99], 2.8, 'Q-2');
    await bench.do('study.record', { ...study, readings: readings(0.3) });
    const line = await meanLine(bench, running);
    expect(line.verdict.verdict).toBe('undecided');
    expect(line.studyText).toMatch(/^gauge s 0\.2.* counts as 2\.\d+ to 3\.\d+ against the limit$/);
    expect(line.strip!.label).toContain('measurement study');
    expect(await meanLine(bench, before)).toMatchObject({ verdict: { verdict: 'meets' }, studyText: '' });
    await bench.do('test.finish', { testId: running, remark: '' });
    const finished = (await bench.do('tests.list', { state: 'finished' })).find(({ testId }) => testId === running)!;
    expect(finished.headline[0]!.studyText).toBe(line.studyText);
  });

  it('of a grade tells agreement', async () => {
    const bench = await testBench();
    const graded = readings(0).map((reading) => ({ ...reading, value: Math.round(reading.value) }));
    const view = await bench.do('study.record', { methodId: 'light-exposure', property: 'greyScale', readings: graded, remark: '' });
    expect(view.kind).toBe('grade');
    expect(view.text).toMatch(/^agreement \d+ %/);
  });

  it('that cannot be worked out is refused and not recorded', async () => {
    const bench = await testBench();
    const entries = await bench.entries();
    const [first, ...rest] = readings(0.3);
    expect((await bench.refused('study.record', { ...study, readings: rest })).message).not.toMatch(/NaN|undefined/);
    expect((await bench.refused('study.record', { ...study, readings: [first!] })).field).not.toBe('');
    expect((await bench.refused('study.record', { ...study, property: 'none', readings: readings(0) })).field).toBe('property');
    expect((await bench.refused('study.record', { ...study, methodId: 'none', readings: readings(0) })).code).toBe('not-found');
    expect((await bench.refused('study.get', { studyId: 'none' })).code).toBe('not-found');
    expect(await bench.entries()).toBe(entries);
  });
});

describe('a control chart', () => {
  it('has the finished tests of a property on a product in order, and its capability against the limits set', async () => {
    const bench = await testBench();
    const means = [3, 3.1, 2.9, 3.05, 2.95, 3.2, 3, 3.1];
    for (const [index, mean] of means.entries()) {
      const testId = await bondTest(bench, [mean - 0.1, mean, mean + 0.1], 2.5, `Q-${index}`);
      await bench.do('test.finish', { testId, remark: '' });
    }
    expect(await bench.do('controlCharts.list', {})).toContainEqual({ methodId: 'lamination-bond', methodTitle: 'Lamination bond', property: 'mean', title: 'Mean bond strength', product: 'dumpling pouch 600 g', tests: 8 });
    const ask = { methodId: 'lamination-bond', property: 'mean', product: 'dumpling pouch 600 g' };
    const chart = await bench.do('controlChart.get', ask);
    expect(chart.tests.map(({ value }) => Math.round(value * 100) / 100)).toEqual(means);
    expect(chart.limits).toEqual({ lower: 2.5, upper: null, source: 'customer' });
    // ISO 7870-2, individuals: centre ± 2.66 · mean moving range; moving ranges 0.1, 0.2, 0.15, 0.1, 0.25, 0.2, 0.1
    const centre = means.reduce((sum, value) => sum + value) / 8;
    expect(chart.control.results.centre!.value).toBeCloseTo(centre, 9);
    expect(chart.control.results.upper!.value).toBeCloseTo(centre + 2.66 * (1.1 / 7), 3);
    expect(chart.capabilityText).toMatch(/^Cpk .*from 8 tests\.$/);
    const subgroups = await bench.do('controlChart.get', { ...ask, chart: 'xbar-r', limits: { lower: null, upper: null } });
    // X̄–R for n = 3: A2 = 1.023, all ranges 0.2
    expect(subgroups.control.results.upper!.value).toBeCloseTo(centre + 1.023 * 0.2, 3);
    expect(subgroups.capability).toBeNull();
    expect(subgroups.capabilityText).toContain('No limit is set');
  });

  it('refuses what it cannot chart', async () => {
    const bench = await testBench();
    const ask = { methodId: 'lamination-bond', property: 'mean', product: 'dumpling pouch 600 g' };
    expect((await bench.refused('controlChart.get', ask)).message).toContain('at least two finished tests');
    for (const [index, forces] of [[3, 3.1], [3, 3.2, 2.9]].entries()) await bench.do('test.finish', { testId: await bondTest(bench, forces, 2.5, `Q-${index}`), remark: '' });
    expect((await bench.refused('controlChart.get', { ...ask, chart: 'xbar-s' })).message).toContain('same number of readings');
    expect((await bench.refused('controlChart.get', { ...ask, property: 'none' })).field).toBe('property');
    expect(await bench.refused('controlChart.get', { ...ask, limits: { lower: 3, upper: 2 } })).toMatchObject({
      field: 'limits.lower',
      message: 'The lower limit (3 N/15 mm) must lie below the upper one (2 N/15 mm).',
    });
    expect((await bench.refused('controlChart.get', { ...ask, methodId: 'light-exposure', property: 'greyScale' })).message).toContain('is a grade');
  });
});
