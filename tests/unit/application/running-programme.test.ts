import { describe, expect, it } from 'vitest';
import { testBench, type TestBench } from './open-application.ts';

const DAY_MS = 86_400_000;

async function programme(bench: TestBench, readAt: string): Promise<string> {
  const { test } = await bench.startTest('light-exposure');
  for (const [key, typed] of Object.entries({ exposedFrom: '2026-03-02', readAt })) if (typed !== '') await bench.do('condition.enter', { testId: test.testId, key, typed });
  await bench.do('readings.paste', { testId: test.testId, row: 'r1', key: 'colour', pasted: 'cyan\t1\t0\t1.40\nyellow\t1\t0\t1.10' });
  return test.testId;
}

const due = async (bench: TestBench) => (await bench.do('today.get', {})).due;

describe('a running programme of light exposure on Today', () => {
  it('asks for its next planned reading, and is not called slow', async () => {
    const bench = await testBench();
    const testId = await programme(bench, '48 96');
    bench.time += 2 * DAY_MS;
    expect(await due(bench)).toMatchObject([{ what: 'Read the patches at 48 h: Q-1', dueOn: '2026-03-04', overdue: false, testId }]);
    bench.time += DAY_MS;
    expect((await due(bench))[0]!.overdue).toBe(true);
    await bench.do('readings.paste', { testId, row: 'r3', key: 'colour', pasted: 'cyan\t1\t48\t1.36' });
    expect((await due(bench))[0]).toMatchObject({ what: 'Read the patches at 48 h: Q-1', why: expect.stringContaining('Not read yet: yellow, 1') });
    await bench.do('readings.paste', { testId, row: 'r4', key: 'colour', pasted: 'yellow\t1\t48\t0.95' });
    expect((await due(bench))[0]).toMatchObject({ what: 'Read the patches at 96 h: Q-1', dueOn: '2026-03-06' });
  });

  it('leaves out rows that were voided', async () => {
    const bench = await testBench();
    const testId = await programme(bench, '48 96');
    await bench.do('readings.paste', { testId, row: 'r3', key: 'colour', pasted: 'cyan\t1\t48\t1.36\nyellow\t1\t48\t0.95' });
    await bench.do('row.void', { testId, row: 'r4', reason: 'The patch was torn' });
    expect((await due(bench))[0]!.what).toBe('Read the patches at 48 h: Q-1');
  });

  it('is slow where nothing is planned, or all of it was read', async () => {
    const bench = await testBench();
    const testId = await programme(bench, '');
    bench.time += 2 * DAY_MS;
    expect((await due(bench))[0]!.what).toMatch(/^Finish Light exposure/);
    await bench.do('condition.enter', { testId, key: 'readAt', typed: '48' });
    expect((await due(bench))[0]!.what).toMatch(/^Read the patches/);
    await bench.do('readings.paste', { testId, row: 'r3', key: 'colour', pasted: 'cyan\t1\t48\t1.36\nyellow\t1\t48\t0.95' });
    expect((await due(bench))[0]!.what).toMatch(/^Finish Light exposure/);
  });

  it('does not travel to the screens as a function', async () => {
    const methods = await (await testBench()).do('methods.list', {});
    expect(methods.find(({ id }) => id === 'light-exposure')).not.toHaveProperty('dueWhileRunning');
  });
});
