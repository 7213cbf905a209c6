import { describe, expect, it, vi } from 'vitest';
import { NotebookStore } from '../../../electron/store/notebook-store.ts';
import type { TraceReading } from '../../../shared-lib/notebook/entry.ts';
import { testBench } from './open-application.ts';

const READING: TraceReading = {
  delimiter: ';',
  decimal: ',',
  headerLines: 1,
  displacementColumn: 0,
  displacementUnit: 'mm',
  forceColumn: 1,
  forceUnit: 'N',
  block: 0,
};

/** A flat trace of 60 mm at `force` newtons, with decimal commas. */
function csv(force: number): string {
  const lines = Array.from({ length: 121 }, (_, index) => `${String(index / 2).replace('.', ',')};${String(index < 6 ? (force * index) / 6 : force).replace('.', ',')}`);
  return Buffer.from(['Extension (mm);Force (N)', ...lines].join('\r\n'), 'utf8').toString('base64');
}

describe('a trace', () => {
  it('is previewed with how it was read', async () => {
    const bench = await testBench();
    const preview = await bench.do('trace.preview', { name: 'strip 1.csv', bytes: csv(3), reading: {} });
    expect(preview).toMatchObject({ reading: READING, points: 121, forceN: { low: 0, high: 3 } });
    const problem = await bench.refused('trace.preview', { name: 'x.csv', bytes: Buffer.from('no numbers here').toString('base64'), reading: {} });
    expect(problem.code).toBe('input');
  });

  it.each([
    ['*not base64*', 'did not arrive whole'],
    ['abc', 'did not arrive whole'],
    ['', 'is empty'],
  ])('is refused when its file is broken: %j', async (bytes, says) => {
    const bench = await testBench();
    expect(await bench.refused('trace.preview', { name: 'x.csv', bytes, reading: {} })).toMatchObject({ code: 'input', field: 'bytes', message: expect.stringContaining(says) });
  });

  it('is read into a cell, gives the result, and is replaced only with a reason', async () => {
    const bench = await testBench();
    const { test } = await bench.startTest('lamination-bond');
    const { testId } = test;
    const cell = { testId, row: 'r1', key: 'trace', reading: READING };
    const readAgain = vi.spyOn(NotebookStore.prototype, 'attachment');
    await bench.do('trace.read', { ...cell, name: 'strip 1.csv', bytes: csv(3) });
    expect(readAgain).not.toHaveBeenCalled();
    readAgain.mockRestore();
    const sheet = await bench.do('reading.enter', { testId, row: 'r1', key: 'mode', typed: 'a' });
    expect(sheet.live!.result.results.mean).toMatchObject({ value: 3, unit: 'N/15 mm', n: 1 });
    const traceId = String(sheet.rows[0]!.cells.trace!.value);
    expect(sheet.traces[traceId]).toEqual({ name: 'strip 1.csv', points: 121 });

    const again = { ...cell, name: 'strip 1 again.csv', bytes: csv(4.5) };
    expect(await bench.refused('trace.read', again)).toMatchObject({ code: 'input', field: 'reason' });
    const replaced = await bench.do('trace.read', { ...again, reason: 'Wrong strip' });
    expect(replaced.rows[0]!.cells.trace!.corrections).toBe(1);
    expect(replaced.live!.result.results.mean!.value).toBeCloseTo(4.5, 12);
    const [entry] = (await bench.do('record.list', { kind: 'trace.read' })).entries;
    expect(entry!.correction).toEqual({ before: 'strip 1.csv', after: 'strip 1 again.csv', reason: 'Wrong strip' });

    await bench.do('test.finish', { testId, remark: '' });
    const { appendix } = await bench.do('report.preview', { title: 'T', recipient: '', remark: '', testIds: [testId], replaces: null });
    expect(appendix[0]!.rows[0]!.cells).toContain('strip 1 again.csv (121 points)');
    expect(appendix[0]!.corrections[0]).toMatchObject({ where: 'specimen 1, Trace', before: 'strip 1.csv', reason: 'Wrong strip' });
  });

  it('goes into a trace field only, and a trace field takes no typing', async () => {
    const bench = await testBench();
    const { test } = await bench.startTest('lamination-bond');
    const input = { testId: test.testId, row: 'r1', reading: READING, name: 'a.csv', bytes: csv(3) };
    expect(await bench.refused('trace.read', { ...input, key: 'forceN' })).toMatchObject({ code: 'conflict' });
    expect(await bench.refused('reading.enter', { testId: test.testId, row: 'r1', key: 'trace', typed: '3' })).toMatchObject({ code: 'input' });
    expect(await bench.refused('trace.read', { ...input, key: 'trace', reading: { ...READING, forceColumn: 7 } })).toMatchObject({ code: 'input' });
  });

  it('is kept once when two cells read the same file', async () => {
    const bench = await testBench();
    const { test } = await bench.startTest('lamination-bond');
    for (const row of ['r1', 'r2']) await bench.do('trace.read', { testId: test.testId, row, key: 'trace', reading: READING, name: 'both.csv', bytes: csv(3) });
    expect((await bench.do('record.list', { kind: 'attachment.added' })).total).toBe(1);
    expect((await bench.do('record.verify', {})).intact).toBe(true);
  });

  it('outlives closing and opening', async () => {
    const bench = await testBench();
    const { test } = await bench.startTest('lamination-bond');
    await bench.do('trace.read', { testId: test.testId, row: 'r1', key: 'trace', reading: READING, name: 'a.csv', bytes: csv(3) });
    const before = await bench.do('reading.enter', { testId: test.testId, row: 'r1', key: 'mode', typed: 'a' });
    await bench.application.close();
    await bench.do('notebook.open', { handle: bench.notebookFile });
    expect(await bench.do('test.get', { testId: test.testId })).toEqual(before);
  });
});
