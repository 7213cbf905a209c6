import { describe, expect, it } from 'vitest';
import { testBench, type TestBench } from './open-application.ts';

const LIMIT = { property: 'wettingTension', lower: 38, upper: null, source: 'customer specification' };

/** Brackets 39–40 at five positions: above 38 whatever the rule. */
async function measured(bench: TestBench, pasted = '39\t40\n39\t40\n39\t40\n39\t40\n39\t40') {
  const { test } = await bench.startTest('test-fluids');
  await bench.do('test.setLimits', { testId: test.testId, limits: [LIMIT], rule: 'guarded', reason: '' });
  return bench.do('readings.paste', { testId: test.testId, row: 'r1', key: 'wetsMNm', pasted });
}

describe('the live result', () => {
  it('follows the readings, with verdict, limit and strip', async () => {
    const bench = await testBench();
    const sheet = await measured(bench);
    const [line] = sheet.live!.lines;
    expect(line).toMatchObject({ key: 'wettingTension', n: 5, limitText: '≥ 38 mN/m', verdict: { verdict: 'meets', limit: LIMIT } });
    expect(line!.text).toBe('between 39 and 40 mN/m');
    expect(line!.strip).toMatchObject({ lowerLimit: 38, upperLimit: null, bound: 'between' });
    expect(line!.strip!.readings).toEqual(Array(5).fill({ value: 39.5, low: 39, high: 40 }));
    expect(line!.strip!.label).toContain('meets');
    expect(sheet.test).toMatchObject({ state: 'running', verdict: 'meets', readings: 5 });
    const short = await bench.do('reading.enter', { testId: sheet.test.testId, row: 'r6', key: 'retractsMNm', typed: '34' });
    expect(short.test.verdict).not.toBe('meets');
  });

  it('names the row and the field by its label when readings contradict each other', async () => {
    const bench = await testBench();
    const sheet = await measured(bench, '39\t40\n38\t36');
    expect(sheet.live).toBeNull();
    expect(sheet.missing!.text).toMatch(/^Position 2: The fluid that retracted \(36 mN\/m\)/);
    const bond = await bench.startTest('lamination-bond');
    const begun = await bench.do('reading.enter', { testId: bond.test.testId, row: 'r3', key: 'forceN', typed: '2,5' });
    expect(begun.missing!.text).toMatch(/^Specimen 3 has no failure;/);
  });

  it('is the verdict of the sample as well: the worst of its tests', async () => {
    const bench = await testBench();
    await measured(bench);
    expect((await bench.do('samples.list', {})).samples[0]).toMatchObject({ code: 'Q-1', tests: 1, verdict: 'meets' });
    await measured(bench, '34\t35\n34\t35\n34\t35');
    const { samples } = await bench.do('samples.list', {});
    expect(samples[0]).toMatchObject({ tests: 2, verdict: 'falls short' });
    expect((await bench.do('sample.get', { sampleId: samples[0]!.sampleId })).testLines.map((test) => test.verdict)).toEqual(['meets', 'falls short']);
  });
});

describe('limits', () => {
  it('are checked, need a reason to be moved, and are taken over by the next test of the product', async () => {
    const bench = await testBench();
    const { test } = await measured(bench);
    const set = (limits: object[], reason = '') => ({ testId: test.testId, limits: limits as never, rule: 'guarded' as const, reason });
    expect(await bench.refused('test.setLimits', set([{ ...LIMIT, property: 'nonsense' }]))).toMatchObject({ field: 'limits[0].property' });
    expect(await bench.refused('test.setLimits', set([{ ...LIMIT, lower: 40, upper: 38 }]))).toMatchObject({
      field: 'limits[0].lower',
      message: 'The lower limit of Wetting tension (40 mN/m) lies above the upper one (38 mN/m).',
    });
    expect(await bench.refused('test.setLimits', set([LIMIT, LIMIT]))).toMatchObject({ field: 'limits[1].property' });
    expect(await bench.refused('test.setLimits', set([{ ...LIMIT, lower: 36 }]))).toMatchObject({ field: 'reason' });
    expect(await bench.refused('test.setLimits', { ...set([LIMIT]), rule: 'simple' })).toMatchObject({ field: 'reason' });
    expect(await bench.refused('test.setLimits', set([]))).toMatchObject({ field: 'reason' });
    const entries = await bench.entries();
    await bench.do('test.setLimits', set([LIMIT]));
    expect(await bench.entries()).toBe(entries);
    const moved = await bench.do('test.setLimits', set([{ ...LIMIT, lower: 41 }], 'New specification, revision C'));
    expect(moved.test.verdict).toBe('falls short');
    const next = await bench.startTest('test-fluids', 'Q-2');
    expect(next.limits).toEqual([{ ...LIMIT, lower: 41 }]);
  });
});

describe('a finished test', () => {
  it('stores its result; finishing twice is refused', async () => {
    const bench = await testBench();
    const { test } = await measured(bench);
    const sheet = await bench.do('test.finish', { testId: test.testId, remark: ' ready ' });
    expect(sheet.test).toMatchObject({ state: 'finished', verdict: 'meets' });
    expect(sheet.remark).toBe('ready');
    expect(sheet.test.headline[0]).toMatchObject({ text: 'between 39 and 40 mN/m' });
    expect(await bench.refused('test.finish', { testId: test.testId, remark: 'ready' })).toMatchObject({ code: 'conflict' });
    expect((await bench.do('tests.list', { state: 'finished' })).map((line) => line.testId)).toEqual([test.testId]);
    expect(await bench.do('tests.list', { state: 'running' })).toEqual([]);
  });

  it('is found by words of its sample and method, and by its id whatever its age', async () => {
    const bench = await testBench();
    const { test } = await measured(bench);
    await bench.do('test.finish', { testId: test.testId, remark: '' });
    const other = await bench.do('test.start', { sampleId: test.sampleId, methodId: 'gloss' });
    const found = async (search: string) => (await bench.do('tests.list', { state: 'finished', search })).map(({ testId }) => testId);
    expect(await found(`fluids ${test.sampleCode}`)).toEqual([test.testId]);
    expect(await found('gloss')).toEqual([]);
    expect((await bench.do('tests.list', { state: 'all', search: 'gloss' })).map(({ testId }) => testId)).toEqual([other.test.testId]);
    await bench.do('test.withdraw', { testId: other.test.testId, reason: 'another sample was meant' });
    expect((await bench.do('tests.named', { testIds: ['of-another-notebook', other.test.testId, test.testId] })).map(({ testId }) => testId)).toEqual([test.testId]);
  });

  it('cannot be finished without a result', async () => {
    const bench = await testBench();
    const { test } = await bench.startTest('test-fluids');
    const problem = await bench.refused('test.finish', { testId: test.testId, remark: '' });
    expect(problem).toMatchObject({ code: 'input', message: expect.stringContaining('Needs 1 complete position, has 0.') });
  });

  it.each([
    ['a correction', { call: 'reading.enter', input: { row: 'r1', key: 'wetsMNm', typed: '36', reason: 'Misread' } }],
    ['another reading', { call: 'reading.enter', input: { row: 'r6', key: 'wetsMNm', typed: '36' } }],
    ['a condition', { call: 'condition.enter', input: { key: 'temperatureC', typed: '23' } }],
    ['a voided row', { call: 'row.void', input: { row: 'r1', reason: 'Touched' } }],
    ['a moved limit', { call: 'test.setLimits', input: { limits: [{ ...LIMIT, lower: 37 }], rule: 'guarded', reason: 'Revision C' } }],
  ] as const)('is outdated by %s until it is finished again', async (_what, { call, input }) => {
    const bench = await testBench();
    const { test } = await measured(bench);
    await bench.do('test.finish', { testId: test.testId, remark: '' });
    const changed = (await bench.do(call, { testId: test.testId, ...input } as never)) as { test: { state: string } };
    expect(changed.test.state).toBe('outdated');
    const today = await bench.do('today.get', {});
    expect(today.outdated.map((line) => line.testId)).toEqual([test.testId]);
    expect(today.due).toMatchObject([{ what: 'Finish Test fluids on Q-1 again', testId: test.testId }]);
    const again = await bench.do('test.finish', { testId: test.testId, remark: '' });
    expect(again.test.state).toBe('finished');
    expect((await bench.do('today.get', {})).due).toEqual([]);
  });

  it('takes a default typed over only with a reason, for its result stands on it', async () => {
    const bench = await testBench();
    const { test } = await measured(bench);
    await bench.do('test.finish', { testId: test.testId, remark: '' });
    expect(await bench.refused('condition.enter', { testId: test.testId, key: 'criterionS', typed: '3' })).toMatchObject({ field: 'reason' });
  });
});

describe('today', () => {
  it('shows what runs for more than a day, what was finished last, and film to test again', async () => {
    const bench = await testBench();
    const film = await bench.do('material.add', { kind: 'film', name: 'PET 12 µm', supplier: 'Osprey Vale', description: '' });
    const lot = await bench.do('lot.add', { materialId: film.materialId, code: 'OV-1', receivedOn: '2026-02-20', note: '' });
    const sample = await bench.do('sample.add', { code: 'Q-1', product: 'dumpling pouch 600 g', job: '', roll: '', note: '', lotIds: [lot.lotId] });
    const { test } = await measured(bench);
    await bench.do('test.finish', { testId: test.testId, remark: '' });
    const running = await bench.startTest('test-fluids');
    expect((await bench.do('today.get', {})).due).toEqual([]);
    bench.time += 2 * 86_400_000;
    const soon = await bench.do('today.get', {});
    expect(soon.running.map((line) => line.testId)).toEqual([running.test.testId]);
    expect(soon.recentlyFinished.map((line) => line.testId)).toEqual([test.testId]);
    expect(soon.due).toMatchObject([{ what: 'Finish Test fluids on Q-1', dueOn: '2026-03-03', overdue: true, testId: running.test.testId }]);
    bench.time += 30 * 86_400_000;
    const later = await bench.do('today.get', {});
    expect(later.due[1]).toMatchObject({ what: 'Test the treatment of PET 12 µm, lot OV-1, again', dueOn: '2026-04-01', sampleId: sample.sampleId });
    expect(later.due[1]!.why).toContain('common practice');
  });
});
