import { describe, expect, it } from 'vitest';
import type { PlanContent } from '../../../shared-lib/plan/plan.ts';
import { frozenPlan } from '../plan/frozen-plan.ts';
import { testBench, type TestBench } from './open-application.ts';

const [tape, bond] = frozenPlan.lines.map(({ lineId }) => lineId) as [string, string];
const DAY = 86_400_000;

async function begin(): Promise<{ bench: TestBench; sampleId: string }> {
  const bench = await testBench();
  const { sampleId } = await bench.do('sample.add', { code: 'Q-1', product: 'dumpling pouch 600 g', job: 'J-1', roll: '', note: '', lotIds: [] });
  return { bench, sampleId };
}

describe('a plan', () => {
  it('is kept, changed by versions with what and why, retired and brought back', async () => {
    const { bench } = await begin();
    const plan = await bench.do('plan.add', { content: frozenPlan });
    expect(plan).toMatchObject({ version: '1', title: 'Frozen dumpling pouch', endUse: 'Frozen pouch', tests: 2, samples: 0, retired: false });
    const stricter: PlanContent = structuredClone(frozenPlan);
    stricter.lines[0]!.limits[0]!.lower = 98;
    const changed = await bench.do('plan.change', { planId: plan.planId, content: stricter, reason: 'Complaint of 2026-02' });
    expect(changed.versions.map(({ version, reason, changes }) => ({ version, reason, changes }))).toEqual([
      { version: '2', reason: 'Complaint of 2026-02', changes: ['Tape adhesion 24 h after printing, limits: Print retained ≥ 95 % (common practice) → Print retained ≥ 98 % (common practice).'] },
      { version: '1', reason: '', changes: [] },
    ]);
    expect(await bench.do('plan.retire', { planId: plan.planId, reason: 'Product ended' })).toMatchObject({ retired: true, retiredReason: 'Product ended' });
    expect(await bench.refused('plan.retire', { planId: plan.planId, reason: 'again' })).toMatchObject({ code: 'conflict' });
    expect(await bench.do('plan.change', { planId: plan.planId, content: stricter, reason: 'Sold again' })).toMatchObject({ retired: false, version: '3' });
    expect((await bench.do('record.list', { kind: 'plan.versioned' })).entries[0]!.text).toBe('Made version 3 of the plan “Frozen dumpling pouch”: Sold again.');
    expect((await bench.do('record.verify', {})).problems).toEqual([]);
  });

  it.each<[string, (content: PlanContent) => void, string]>([
    ['no test', (content) => (content.lines = []), 'content.lines'],
    ['a method that is not there', (content) => (content.lines[0]!.methodId = 'chewing'), 'content.lines[0].methodId'],
    ['a line twice', (content) => (content.lines[1]!.lineId = content.lines[0]!.lineId), 'content.lines[1].lineId'],
    ['more rows than the method takes', (content) => (content.lines[1]!.replicates = 101), 'content.lines[1].replicates'],
    ['half a specimen', (content) => (content.lines[1]!.replicates = 2.5), 'content.lines[1].replicates'],
    ['hours on film before printing', (content) => (content.lines[0]!.moment = { from: 'film', hours: 24 }), 'content.lines[0].moment.hours'],
    ['a moment before it was printed', (content) => (content.lines[0]!.moment.hours = -1), 'content.lines[0].moment.hours'],
    ['a limit on what has none', (content) => (content.lines[1]!.limits[0]!.property = 'shareTorn'), 'content.lines[1].limits[0].property'],
    ['a limit without an end', (content) => (content.lines[1]!.limits[0]!.lower = null), 'content.lines[1].limits[0].lower'],
    ['a condition that the method does not know', (content) => (content.lines[0]!.conditions = { colour: 'red' }), 'content.lines[0].conditions.colour'],
    ['a condition outside its choices', (content) => (content.lines[0]!.conditions = { moment: 'tomorrow' }), 'content.lines[0].conditions.moment'],
    ['an instrument, which is named on the sheet', (content) => (content.lines[1]!.conditions = { instrument: 'Tensile tester, T-3' }), 'content.lines[1].conditions.instrument'],
    ['a test without a reason', (content) => (content.lines[0]!.reasons = []), 'content.lines[0].reasons'],
    ['a drop without a reason', (content) => (content.dropped[0]!.reason = ' '), 'content.dropped[0].reason'],
    ['no title', (content) => (content.title = ' '), 'content.title'],
  ])('is refused with %s', async (_what, spoil, field) => {
    const { bench } = await begin();
    const content = structuredClone(frozenPlan);
    spoil(content);
    expect(await bench.refused('plan.add', { content })).toMatchObject({ code: 'input', field });
    expect(await bench.do('plans.list', {})).toEqual([]);
  });

  it('is refused under a title that there is, and as a version that is no different or says no reason', async () => {
    const { bench } = await begin();
    const { planId } = await bench.do('plan.add', { content: frozenPlan });
    expect(await bench.refused('plan.add', { content: { ...frozenPlan, title: 'FROZEN dumpling pouch' } })).toMatchObject({ field: 'content.title' });
    expect(await bench.refused('plan.change', { planId, content: frozenPlan, reason: 'x' })).toMatchObject({ field: 'content' });
    expect(await bench.refused('plan.change', { planId, content: { ...frozenPlan, customer: '' }, reason: ' ' })).toMatchObject({ field: 'reason' });
    expect(await bench.refused('plan.get', { planId: 'nobody' })).toMatchObject({ code: 'not-found' });
  });

  it('goes on paper in any of its versions', async () => {
    const { bench } = await begin();
    const { planId } = await bench.do('plan.add', { content: frozenPlan });
    await bench.do('plan.change', { planId, content: { ...frozenPlan, customer: '' }, reason: 'Several customers' });
    expect(await bench.do('plan.pdf', { planId, version: '1' })).toMatchObject({ fileName: 'plan-frozen-dumpling-pouch-v1.pdf' });
    const [sheet] = bench.renderedPlans;
    expect(sheet!.facts).toContainEqual({ label: 'Version', text: '1, replaced by version 2' });
    expect(sheet!.lines[1]).toMatchObject({ when: '7 days after lamination', howMany: '5 specimens', limits: ['Weakest specimen ≥ 1 N/15 mm (common practice)'] });
    expect(sheet!.dropped).toEqual([{ method: 'Crinkle of the print between the fingers, 24 h after printing', reason: 'The customer does not ask for it' }]);
    expect(sheet!.hazards).toEqual([
      { hazard: 'Blade', methods: 'Tape adhesion, Lamination bond' },
      { hazard: 'Solvent', methods: 'Tape adhesion, Lamination bond' },
    ]);
    expect(sheet!.notes[0]).toMatch(/customer’s specification and local law prevail/);
    expect(await bench.refused('plan.pdf', { planId, version: '9' })).toMatchObject({ code: 'not-found' });
  });
});

describe('a sample that follows a plan', () => {
  /** Printed on the morning of 2 March, laminated a day later. */
  const times = { printedAt: '2026-03-02T06:00:00.000Z', laminatedAt: '2026-03-03T06:00:00.000Z' };

  async function follow() {
    const { bench, sampleId } = await begin();
    const { planId } = await bench.do('plan.add', { content: frozenPlan });
    const plan = await bench.do('samplePlan.follow', { sampleId, planId, ...times });
    const stateOf = async (lineId: string) => (await bench.do('samplePlan.get', { sampleId }))!.lines.find(({ line }) => line.lineId === lineId)!;
    return { bench, sampleId, planId, plan, stateOf };
  }

  it('knows what is due when, and Today says it until it is begun', async () => {
    const { bench, sampleId, plan } = await follow();
    expect(plan.lines.map(({ state, dueAt, replicatesText, momentText }) => ({ state, dueAt, replicatesText, momentText }))).toEqual([
      { state: 'to come', dueAt: '2026-03-03T06:00:00.000Z', replicatesText: '3 specimens', momentText: '24 h after printing' },
      { state: 'to come', dueAt: '2026-03-10T06:00:00.000Z', replicatesText: '5 specimens', momentText: '7 days after lamination' },
    ]);
    const planned = async () => (await bench.do('today.get', {})).due.filter(({ why }) => why.includes('by the plan')).map(({ what, dueOn, overdue }) => `${what} ${dueOn}${overdue ? ' overdue' : ''}`);
    // 2 March: the bond of 10 March is more than a week away.
    expect(await planned()).toEqual(['Tape adhesion: Q-1 2026-03-03']);
    bench.time += 2 * DAY;
    expect(await planned()).toEqual(['Tape adhesion: Q-1 2026-03-03 overdue', 'Lamination bond: Q-1 2026-03-10']);
    await bench.do('samplePlan.startLine', { sampleId, lineId: tape });
    expect(await planned()).toEqual(['Lamination bond: Q-1 2026-03-10']);
    // What was disposed of is not tested any more.
    await bench.do('sample.retire', { sampleId, reason: 'Used up' });
    expect(await planned()).toEqual([]);
    await bench.do('sample.return', { sampleId, reason: 'A piece was found' });
    expect(await planned()).toEqual(['Lamination bond: Q-1 2026-03-10']);
    await bench.do('samplePlan.startLine', { sampleId, lineId: bond });
    expect(await planned()).toEqual([]);
  });

  it('starts a test with the conditions, limits and rows of its plan, and is judged by them', async () => {
    const { bench, sampleId, stateOf } = await follow();
    const sheet = await bench.do('samplePlan.startLine', { sampleId, lineId: bond });
    expect(sheet.limits).toEqual(frozenPlan.lines[1]!.limits);
    expect(sheet.rule).toBe('guarded');
    expect(sheet.rows).toHaveLength(5);
    expect((await bench.do('samplePlan.startLine', { sampleId, lineId: tape })).rows).toHaveLength(3);
    const { testId } = sheet.test;
    expect(await stateOf(bond)).toMatchObject({ state: 'running', testId });
    await bench.do('condition.enter', { testId, key: 'speedMmPerMin', typed: '100' });
    for (const [index, typed] of ['1,6', '1,8', '2,0', '0,9', '1,7'].entries()) {
      await bench.do('reading.enter', { testId, row: `r${index + 1}`, key: 'forceN', typed });
      await bench.do('reading.enter', { testId, row: `r${index + 1}`, key: 'mode', typed: 'a' });
    }
    await bench.do('test.finish', { testId, remark: '' });
    // The weakest of them, 0.9 N on 15 mm, is below the 1 N/15 mm of the plan.
    expect(await stateOf(bond)).toMatchObject({ state: 'falls short' });
    await bench.do('reading.enter', { testId, row: 'r4', key: 'forceN', typed: '1,9', reason: 'misread' });
    expect(await stateOf(bond)).toMatchObject({ state: 'outdated' });
    await bench.do('test.finish', { testId, remark: '' });
    expect(await stateOf(bond)).toMatchObject({ state: 'meets' });
  });

  it('is not done with a test of fewer complete rows than it asks for: the plan says so, and Today keeps asking', async () => {
    const { bench, sampleId, stateOf } = await follow();
    bench.time += 8 * DAY;
    const { test } = await bench.do('samplePlan.startLine', { sampleId, lineId: bond });
    const { testId } = test;
    const asked = async () => (await bench.do('today.get', { of: 'plan' })).due.map(({ what }) => what);
    const read = async (row: number) => {
      await bench.do('reading.enter', { testId, row: `r${row}`, key: 'forceN', typed: '1,8' });
      await bench.do('reading.enter', { testId, row: `r${row}`, key: 'mode', typed: 'a' });
    };
    await bench.do('condition.enter', { testId, key: 'speedMmPerMin', typed: '100' });
    for (const row of [1, 2, 3, 4, 5]) await read(row);
    await bench.do('row.void', { testId, row: 'r5', reason: 'slipped in the clamp' });
    await bench.do('test.finish', { testId, remark: '' });
    expect(await stateOf(bond)).toMatchObject({ state: 'too few', tooFew: '4 of 5 specimens', testId });
    expect(await asked()).toEqual(['Tape adhesion: Q-1', 'Lamination bond (too few: 4 of 5 specimens): Q-1']);
    // Also when every line of the plan has a test.
    await bench.do('samplePlan.startLine', { sampleId, lineId: tape });
    expect(await asked()).toEqual(['Lamination bond (too few: 4 of 5 specimens): Q-1']);
    await read(6);
    await bench.do('test.finish', { testId, remark: '' });
    expect(await stateOf(bond)).toMatchObject({ state: 'meets', tooFew: '' });
    expect(await asked()).toEqual([]);
    // Begun anew, it runs, and the readings of the first do not count for it.
    const again = await bench.do('samplePlan.startLine', { sampleId, lineId: bond });
    expect(await stateOf(bond)).toMatchObject({ state: 'running', tooFew: '', testId: again.test.testId });
  });

  it('has its plan, moment and number on the sheet of a test', async () => {
    const { bench, sampleId, planId } = await follow();
    const { test } = await bench.do('samplePlan.startLine', { sampleId, lineId: bond });
    const planned = { planId, plan: 'Frozen dumpling pouch', momentText: '7 days after lamination', preparation: '', replicatesText: '5 specimens' };
    expect((await bench.do('test.get', { testId: test.testId })).planned).toEqual(planned);
    // A later version without the line does not take it from the test.
    await bench.do('plan.change', { planId, content: { ...frozenPlan, lines: frozenPlan.lines.slice(0, 1) }, reason: 'No laminate any more' });
    await bench.do('samplePlan.follow', { sampleId, planId, ...times, reason: 'Printed without lamination' });
    expect((await bench.do('test.get', { testId: test.testId })).planned).toEqual(planned);
    expect((await bench.do('test.start', { sampleId, methodId: 'tape-adhesion' })).planned).toBeUndefined();
  });

  it('is said to be kept too short where tests fall after that day, and is disposed of behind them', async () => {
    const { bench, sampleId } = await begin();
    const sample = { code: 'Q-1', product: 'dumpling pouch 600 g', job: 'J-1', roll: '', note: '', lotIds: [], reason: 'stays in the cold store' };
    await bench.do('sample.change', { sampleId, ...sample, retainedUntil: '2026-03-08' });
    const { planId } = await bench.do('plan.add', { content: frozenPlan });
    const { keptTooShort } = await bench.do('samplePlan.follow', { sampleId, planId, ...times });
    expect(keptTooShort).toBe('The sample is kept until 2026-03-08, and the plan asks for tests until 2026-03-10: keep it longer.');
    bench.time += 5 * DAY;
    expect((await bench.do('today.get', {})).due.map(({ what, why, dueOn }) => [what, dueOn, why])).toEqual([
      ['Tape adhesion: Q-1', '2026-03-03', expect.anything()],
      ['Lamination bond: Q-1', '2026-03-10', expect.anything()],
      ['Dispose of sample Q-1, or keep it longer', '2026-03-10', 'It is kept until 2026-03-08; its plan still asks for tests until 2026-03-10.'],
    ]);
    await bench.do('sample.change', { sampleId, ...sample, retainedUntil: '2026-03-10' });
    expect((await bench.do('samplePlan.get', { sampleId }))!.keptTooShort).toBe('');
    await bench.do('sample.change', { sampleId, ...sample, retainedUntil: '2026-03-08' });
    for (const lineId of [tape, bond]) await bench.do('samplePlan.startLine', { sampleId, lineId });
    expect((await bench.do('samplePlan.get', { sampleId }))!.keptTooShort).toBe('');
    expect((await bench.do('today.get', { of: 'sample' })).due).toMatchObject([{ dueOn: '2026-03-08', why: 'It is kept until 2026-03-08.' }]);
  });

  it('is named by the number of its tests where several are due at one moment', async () => {
    const { bench, sampleId } = await begin();
    const content: PlanContent = structuredClone(frozenPlan);
    content.lines[1]!.moment = content.lines[0]!.moment;
    const { planId } = await bench.do('plan.add', { content });
    await bench.do('samplePlan.follow', { sampleId, planId, ...times });
    expect((await bench.do('today.get', { of: 'plan' })).due).toMatchObject([{ what: '2 tests: Q-1', detail: 'Tape adhesion, Lamination bond' }]);
  });

  it('keeps its version when the plan gets another, until it takes that up with a reason', async () => {
    const { bench, sampleId, planId } = await follow();
    await bench.do('plan.change', { planId, content: { ...frozenPlan, lines: frozenPlan.lines.slice(0, 1) }, reason: 'No laminate any more' });
    expect(await bench.do('samplePlan.get', { sampleId })).toMatchObject({ version: '1', newestVersion: '2', lines: { length: 2 } });
    expect((await bench.do('plan.get', { planId })).versions.map(({ version, samples }) => `${version}: ${samples}`)).toEqual(['2: 0', '1: 1']);
    expect(await bench.refused('samplePlan.follow', { sampleId, planId, ...times })).toMatchObject({ field: 'reason' });
    expect(await bench.do('samplePlan.follow', { sampleId, planId, ...times, reason: 'Printed without lamination' })).toMatchObject({ version: '2', lines: { length: 1 } });
    expect(await bench.refused('samplePlan.follow', { sampleId, planId, ...times, reason: 'again' })).toMatchObject({ code: 'conflict' });
  });

  it('takes a test that was made without the plan, but only its own and by the same method', async () => {
    const { bench, sampleId, stateOf } = await follow();
    const onPress = await bench.do('test.start', { sampleId, methodId: 'tape-adhesion' });
    await bench.do('condition.enter', { testId: onPress.test.testId, key: 'moment', typed: 'p' });
    expect(await bench.refused('samplePlan.takeTest', { sampleId, lineId: tape, testId: onPress.test.testId })).toMatchObject({ field: 'testId', message: expect.stringContaining('another condition') as string });
    const { test } = await bench.do('test.start', { sampleId, methodId: 'tape-adhesion' });
    expect((await stateOf(tape)).mayTake.map(({ testId }) => testId)).toEqual([test.testId]);
    expect(await bench.refused('samplePlan.takeTest', { sampleId, lineId: bond, testId: test.testId })).toMatchObject({ field: 'testId' });
    const other = await bench.do('sample.add', { code: 'Q-2', product: '', job: '', roll: '', note: '', lotIds: [] });
    const strange = await bench.do('test.start', { sampleId: other.sampleId, methodId: 'tape-adhesion' });
    expect(await bench.refused('samplePlan.takeTest', { sampleId, lineId: tape, testId: strange.test.testId })).toMatchObject({ field: 'testId' });
    await bench.do('samplePlan.takeTest', { sampleId, lineId: tape, testId: test.testId });
    expect(await stateOf(tape)).toMatchObject({ state: 'running', testId: test.testId, mayTake: [] });
    expect(await bench.refused('samplePlan.takeTest', { sampleId, lineId: tape, testId: test.testId })).toMatchObject({ field: 'testId', message: expect.stringContaining('already') as string });
    // Under another plan it may stand for a line again.
    const second = await bench.do('plan.add', { content: { ...frozenPlan, title: 'Chilled dumpling pouch' } });
    await bench.do('samplePlan.follow', { sampleId, planId: second.planId, ...times, reason: 'Sold chilled' });
    expect((await stateOf(tape)).mayTake.map(({ testId }) => testId)).toEqual([test.testId]);
  });

  it('judges a test that it takes by the limits of the plan, whatever limits that was made with', async () => {
    const { bench, sampleId, stateOf } = await follow();
    const { test } = await bench.do('test.start', { sampleId, methodId: 'lamination-bond' });
    const { testId } = test;
    await bench.do('test.setLimits', { testId, limits: [{ property: 'mean', lower: 0.2, upper: null, source: 'a hope' }], rule: 'simple', reason: '' });
    await bench.do('condition.enter', { testId, key: 'speedMmPerMin', typed: '100' });
    for (const row of ['r1', 'r2', 'r3']) {
      await bench.do('reading.enter', { testId, row, key: 'forceN', typed: '0,7' });
      await bench.do('reading.enter', { testId, row, key: 'mode', typed: 'a' });
    }
    expect((await bench.do('test.finish', { testId, remark: '' })).test.verdict).toBe('meets');
    await bench.do('samplePlan.takeTest', { sampleId, lineId: bond, testId });
    // 0.7 N/15 mm meets the 0.2 of the test, not the 1 of the plan.
    const line = await stateOf(bond);
    expect(line.state).toBe('falls short');
    expect(line.results.map(({ key, text, limitText, verdict }) => `${key} ${text} ${limitText} ${verdict.verdict}`)).toContain('minimum 0.7 N/15 mm ≥ 1 N/15 mm falls short');
  });

  it('has no due dates while its times are not stated; moving a stated one needs a reason', async () => {
    const { bench, sampleId } = await begin();
    const { planId } = await bench.do('plan.add', { content: frozenPlan });
    const plan = await bench.do('samplePlan.follow', { sampleId, planId, printedAt: null, laminatedAt: null });
    expect(plan.lines.map(({ state, dueAt }) => [state, dueAt])).toEqual([['not started', null], ['not started', null]]);
    const stated = await bench.do('samplePlan.setTimes', { sampleId, printedAt: times.printedAt, laminatedAt: null });
    expect(stated.lines.map(({ state }) => state)).toEqual(['to come', 'not started']);
    expect(await bench.refused('samplePlan.setTimes', { sampleId, printedAt: null, laminatedAt: null })).toMatchObject({ field: 'reason' });
    expect(await bench.refused('samplePlan.setTimes', { sampleId, printedAt: times.laminatedAt, laminatedAt: times.printedAt, reason: 'x' })).toMatchObject({ field: 'laminatedAt' });
    expect(await bench.refused('samplePlan.setTimes', { sampleId, printedAt: 'yesterday', laminatedAt: null })).toMatchObject({ field: 'printedAt' });
  });

  it('leaves it with a reason; a retired plan is not taken up', async () => {
    const { bench, sampleId, planId } = await follow();
    expect(await bench.refused('samplePlan.leave', { sampleId, reason: '' })).toMatchObject({ field: 'reason' });
    await bench.do('samplePlan.leave', { sampleId, reason: 'Taken for another job' });
    expect(await bench.do('samplePlan.get', { sampleId })).toBeNull();
    expect((await bench.do('today.get', {})).due.filter(({ why }) => why.includes('by the plan'))).toEqual([]);
    expect(await bench.refused('samplePlan.startLine', { sampleId, lineId: tape })).toMatchObject({ code: 'not-found' });
    await bench.do('plan.retire', { planId, reason: 'Product ended' });
    expect(await bench.refused('samplePlan.follow', { sampleId, planId, ...times })).toMatchObject({ code: 'conflict' });
  });

  it('survives closing, and every table follows from the record', async () => {
    const { bench, sampleId } = await follow();
    await bench.do('samplePlan.startLine', { sampleId, lineId: tape });
    await bench.do('notebook.checkpoint', {});
    expect(await bench.do('record.verify', {})).toMatchObject({ intact: true, problems: [] });
  });
});
