import { createHash } from 'node:crypto';
import { describe, expect, it } from 'vitest';
import { testBench, type TestBench } from './open-application.ts';

const LIMIT = { property: 'wettingTension', lower: 38, upper: null, source: 'customer specification' };

async function finished(bench: TestBench, code: string, pasted = '39\t40\n39\t40\n39\t40') {
  const { test } = await bench.startTest('test-fluids', code);
  await bench.do('test.setLimits', { testId: test.testId, limits: [LIMIT], rule: 'guarded', reason: 'Same for every sample' });
  await bench.do('readings.paste', { testId: test.testId, row: 'r1', key: 'wetsMNm', pasted });
  await bench.do('test.finish', { testId: test.testId, remark: '' });
  return test.testId;
}

const request = (testIds: string[]) => ({ title: 'Treatment of the new film', recipient: 'Osprey Vale', remark: '', testIds, replaces: null });

describe('a report', () => {
  it('is refused while a test runs or is outdated, naming which', async () => {
    const bench = await testBench();
    const done = await finished(bench, 'Q-1');
    const outdated = await finished(bench, 'Q-2');
    await bench.do('reading.enter', { testId: outdated, row: 'r1', key: 'wetsMNm', typed: '38', reason: 'Misread' });
    const running = (await bench.startTest('test-fluids', 'Q-3')).test.testId;
    for (const call of ['report.preview', 'report.issue'] as const) {
      const problem = await bench.refused(call, request([done, outdated, running]));
      expect(problem).toMatchObject({
        code: 'conflict',
        message: 'These tests must be finished first: Test fluids on Q-2 was changed after it was finished; Test fluids on Q-3 is still running.',
      });
    }
    expect(await bench.refused('report.issue', request([done, done]))).toMatchObject({ code: 'conflict' });
    expect(await bench.refused('report.issue', request(['nonsense']))).toMatchObject({ code: 'not-found' });
    expect(await bench.do('reports.list', {})).toEqual([]);
  });

  it('previews without a number, and is issued with one, frozen as it was', async () => {
    const bench = await testBench();
    const testId = await finished(bench, 'Q-1');
    const preview = await bench.do('report.preview', request([testId]));
    expect(preview).toMatchObject({ number: '', overall: 'meets', preparedBy: 'Imke Rasmund', replaces: null });

    const line = await bench.do('report.issue', request([testId]));
    expect(line).toMatchObject({ number: 'LR-2026-001', tests: 1, verdict: 'meets', issuedBy: 'Imke Rasmund', replaces: null, replacedBy: null });
    const content = await bench.do('report.content', { reportId: line.reportId });
    expect(content).toEqual({ ...preview, number: 'LR-2026-001' });
    expect(bench.rendered).toEqual([content]);
    const pdf = await bench.do('report.pdf', { reportId: line.reportId });
    expect(pdf.fileName).toBe('LR-2026-001.pdf');
    expect(Buffer.from(pdf.bytes, 'base64').toString()).toBe('%PDF of LR-2026-001');

    await bench.do('reading.enter', { testId, row: 'r1', key: 'wetsMNm', typed: '30', reason: 'Misread' });
    expect(await bench.do('report.content', { reportId: line.reportId })).toEqual(content);
    const [entry] = (await bench.do('record.list', { kind: 'report.issued' })).entries;
    expect(entry!.text).toContain('LR-2026-001');
    expect((await bench.do('record.list', { kind: 'attachment.added' })).entries.map(({ text }) => text)).toEqual([
      expect.stringContaining('LR-2026-001.pdf'),
      expect.stringContaining('LR-2026-001.json'),
    ]);
  });

  it('takes the place of an earlier one once, and says so on both', async () => {
    const bench = await testBench();
    const testId = await finished(bench, 'Q-1');
    const first = await bench.do('report.issue', request([testId]));
    const replaces = { reportId: first.reportId, reason: 'Recipient was wrong' };
    const preview = await bench.do('report.preview', { ...request([testId]), replaces: first.reportId });
    expect(preview.replaces).toEqual({ number: 'LR-2026-001', reason: '' });
    const second = await bench.do('report.issue', { ...request([testId]), replaces });
    expect(second).toMatchObject({ number: 'LR-2026-002', replaces: first.reportId });
    expect((await bench.do('report.content', { reportId: second.reportId })).replaces).toEqual({ number: 'LR-2026-001', reason: 'Recipient was wrong' });
    expect((await bench.do('reports.list', {})).map(({ number, replacedBy }) => [number, replacedBy])).toEqual([
      ['LR-2026-002', null],
      ['LR-2026-001', second.reportId],
    ]);
    const problem = await bench.refused('report.issue', { ...request([testId]), replaces });
    expect(problem).toMatchObject({ code: 'conflict', message: 'LR-2026-001 is replaced by LR-2026-002 already; replace that one.' });
    expect(await bench.refused('report.issue', { ...request([testId]), replaces: { reportId: 'none', reason: 'x' } })).toMatchObject({ code: 'not-found' });
    bench.time = Date.parse('2027-01-04T08:00:00Z');
    expect(await bench.do('report.issue', request([testId]))).toMatchObject({ number: 'LR-2027-001' });
  });

  it('holds every correction and voided row in its appendix', async () => {
    const bench = await testBench();
    const { test } = await bench.startTest('test-fluids', 'Q-1');
    const { testId } = test;
    await bench.do('readings.paste', { testId, row: 'r1', key: 'wetsMNm', pasted: '38,5\t39\n38\t39\n50\t52' });
    await bench.do('reading.enter', { testId, row: 'r2', key: 'wetsMNm', typed: '37', reason: 'Misread the bottle' });
    await bench.do('row.void', { testId, row: 'r3', reason: 'Touched by hand' });
    await bench.do('row.remark', { testId, row: 'r1', remark: 'near the fold' });
    await bench.do('test.finish', { testId, remark: '' });
    const { appendix, sections } = await bench.do('report.preview', request([testId]));
    expect(appendix[0]).toEqual({
      heading: 'Q-1 · Test fluids',
      columns: [
        { title: 'Position', unit: '' },
        { title: 'Position', unit: '' },
        { title: 'Across', unit: 'mm' },
        { title: 'Holds for 2 s', unit: 'mN/m' },
        { title: 'Retracts within 2 s', unit: 'mN/m' },
      ],
      rows: [
        { cells: ['1', '', '', '38,5', '39'], voided: '', remark: 'near the fold' },
        { cells: ['2', '', '', '37', '39'], voided: '', remark: '' },
        { cells: ['3', '', '', '50', '52'], voided: 'Touched by hand', remark: '' },
      ],
      corrections: [{ where: 'position 2, Holds for 2 s', before: '38 mN/m', after: '37 mN/m', reason: 'Misread the bottle', by: 'Imke Rasmund', at: '2026-03-02T08:00:00.000Z' }],
    });
    expect(sections[0]).toMatchObject({ heading: 'Q-1 · Test fluids', testedBy: 'Imke Rasmund', sample: { code: 'Q-1', product: 'dumpling pouch 600 g' } });
    expect(sections[0]!.table).toHaveLength(2);
  });

  it('is not issued when the notebook was changed while its pages were made', async () => {
    const bench = await testBench();
    const testId = await finished(bench, 'Q-1');
    const issuing = bench.application.call('report.issue', request([testId]));
    await bench.do('person.add', { name: 'Abena Quist', initials: 'AQ', role: 'quality lead' });
    expect(await issuing).toMatchObject({ ok: false, problem: { code: 'conflict' } });
    expect(await bench.do('reports.list', {})).toEqual([]);
  });

  it('is kept under the hash of its content', async () => {
    const bench = await testBench();
    const line = await bench.do('report.issue', request([await finished(bench, 'Q-1')]));
    const content = await bench.do('report.content', { reportId: line.reportId });
    const sha256 = createHash('sha256').update(JSON.stringify(content)).digest('hex');
    const { total } = await bench.do('record.list', { kind: 'report.issued', search: sha256 });
    expect(total).toBe(1);
  });
});
