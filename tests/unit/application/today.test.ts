import { describe, expect, it } from 'vitest';
import { frozenPlan } from '../plan/frozen-plan.ts';
import { START, testBench, TestBench } from './open-application.ts';

const DAY = 86_400_000;
const dayOf = (days: number) => new Date(START + days * DAY).toISOString().slice(0, 10);
const sample = (code: string, retainedUntil = '') => ({ code, product: 'dumpling pouch 600 g', job: 'J-100', roll: 'R1', note: '', lotIds: [], retainedUntil });

describe('Today with much that is due', () => {
  it('shows the first of what is overdue and of what is next, counts all by kind, and gives more where it is asked for', async () => {
    const bench = await testBench();
    // Kept until a day each: S-1 the longest ago, S-40 in 9 days.
    for (let number = 1; number <= 40; number += 1) await bench.do('sample.add', sample(`S-${number}`, dayOf(number - 31)));
    await bench.do('instrument.add', { name: 'Gloss meter', serial: 'G-1', methodIds: ['gloss'], note: '' });
    const today = await bench.do('today.get', { mostOverdue: 4, mostNext: 3 });
    expect(today.dueCounts).toEqual([
      { kind: 'instrument', overdue: 0, next: 1 },
      { kind: 'sample', overdue: 30, next: 10 },
    ]);
    expect(today.due.map(({ what, overdue }) => `${what.match(/S-\d+|Gloss/)![0]} ${overdue}`)).toEqual(['S-1 true', 'S-2 true', 'S-3 true', 'S-4 true', 'Gloss false', 'S-31 false', 'S-32 false']);
    const instruments = await bench.do('today.get', { of: 'instrument' });
    expect(instruments.due).toMatchObject([{ kind: 'instrument', what: 'Calibrate Gloss meter, G-1' }]);
    expect(instruments.dueCounts).toEqual(today.dueCounts);
    expect((await bench.do('today.get', {})).due).toHaveLength(20 + 11);
    expect((await bench.do('today.get', { mostOverdue: 2000 })).due).toHaveLength(41);
  });

  it('shows the newest of the tests that run, and counts them', async () => {
    const bench = await testBench();
    for (let number = 1; number <= 4; number += 1) await bench.startTest('gloss', `S-${number}`);
    const today = await bench.do('today.get', { mostRunning: 2 });
    expect(today.running.map(({ sampleCode }) => sampleCode)).toEqual(['S-4', 'S-3']);
    expect(today.testCounts).toEqual({ running: 4, outdated: 0 });
  });
});

describe('what is kept of what is due', () => {
  it('is after every entry what a notebook that was just opened finds', async () => {
    const bench = await testBench();
    const { personId } = (await bench.do('session.get', {})).atBench!;
    await bench.do('passphrase.set', { personId, passphrase: 'four quiet rollers' });
    const material = await bench.do('material.add', { kind: 'film', name: 'PET 12 µm', supplier: '', description: '' });
    const lot = await bench.do('lot.add', { materialId: material.materialId, code: 'OV-1', receivedOn: null, note: '' });
    const seen = new Set<string>();
    const same = async () => {
      const kept = await bench.do('today.get', { mostOverdue: 2000 });
      const fresh = new TestBench();
      fresh.time = bench.time;
      await fresh.application.open(bench.notebookFile);
      expect(await fresh.do('today.get', { mostOverdue: 2000 })).toEqual(kept);
      await fresh.application.close();
      for (const { what } of kept.due) seen.add(what);
    };
    await same();
    const { sampleId } = await bench.do('sample.add', { ...sample('Q-1', dayOf(5)), lotIds: [lot.lotId] });
    await same();
    const { test } = await bench.do('test.start', { sampleId, methodId: 'test-fluids' });
    await same();
    for (const row of ['r1', 'r2', 'r3', 'r4', 'r5']) await bench.do('reading.enter', { testId: test.testId, row, key: 'wetsMNm', typed: '38' });
    await bench.do('test.finish', { testId: test.testId, remark: '' });
    await same();
    await bench.do('reading.enter', { testId: test.testId, row: 'r1', key: 'wetsMNm', typed: '40', reason: 'misread' });
    await same();
    await bench.do('test.finish', { testId: test.testId, remark: '' });
    bench.time += 31 * DAY;
    await same();
    const decay = await bench.do('test.start', { sampleId, methodId: 'treatment-decay' });
    for (const [key, typed] of [['requiredMNm', '40'], ['treatedOn', '2026-02-27']] as const) await bench.do('condition.enter', { testId: decay.test.testId, key, typed });
    await bench.do('readings.paste', { testId: decay.test.testId, row: 'r1', key: 'days', pasted: '0\t44\t45\n2\t43\t44\n4\t42\t43\n7\t41\t42\n10\t40\t41\n14\t39\t41\n21\t38\t39\n30\t37\t38\n45\t36\t37\n60\t36\t37' });
    await bench.do('test.finish', { testId: decay.test.testId, remark: '' });
    await same();
    await bench.do('sample.change', { sampleId, ...sample('Q-1b', dayOf(5)), reason: 'misread' });
    await same();
    const by = await bench.do('test.start', { sampleId, methodId: 'test-fluids' });
    await same();
    await bench.do('test.withdraw', { testId: by.test.testId, reason: 'wrong sample' });
    await same();
    const { planId } = await bench.do('plan.add', { content: frozenPlan });
    await bench.do('samplePlan.follow', { sampleId, planId, printedAt: '2026-03-28T09:00:00.000Z', laminatedAt: null });
    await same();
    await bench.do('samplePlan.startLine', { sampleId, lineId: frozenPlan.lines[0]!.lineId });
    await same();
    await bench.do('samplePlan.leave', { sampleId, reason: 'another product' });
    await same();
    await bench.do('lot.retire', { lotId: lot.lotId, reason: 'used up' });
    await same();
    await bench.do('sample.retire', { sampleId, reason: 'used up' });
    await same();
    await bench.do('undo.last', {});
    await same();
    // Each of them was there at some time, so that something could have been kept too long.
    expect([...seen].map((what) => what.replace('Q-1b', 'Q-1')).sort()).toEqual(
      expect.arrayContaining(['Dispose of sample Q-1, or keep it longer', 'Finish Test fluids on Q-1 again', 'Test the treatment again: Q-1', 'Test the treatment of PET 12 µm, lot OV-1, again', 'Tape adhesion: Q-1']),
    );
    expect((await bench.do('today.get', {})).due.map(({ what }) => what)).toContain('Test the treatment again: Q-1b');
  });
});
