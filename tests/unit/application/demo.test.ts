import { copyFileSync, mkdtempSync, readdirSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { monotonicFactory } from 'ulid';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { buildDemoNotebook } from '../../../electron/application/demo/build-demo-notebook.ts';
import { NotebookStore } from '../../../electron/store/notebook-store.ts';
import { makeLargeNotebook } from '../../bench/large-notebook.ts';
import { TestBench } from './open-application.ts';

const print = {
  renderReport: async ({ number }: { number: string }) => Buffer.from(`%PDF ${number}`),
  renderApproval: async ({ signature }: { signature: { at: string } }) => Buffer.from(`%PDF ${signature.at}`),
};

async function entriesOf(file: string): Promise<string[]> {
  const store = await NotebookStore.open(file, { now: () => new Date(0), ulid: () => 'reader' });
  const entries = [...store.entries()].map((entry) => JSON.stringify(entry));
  store.close();
  return entries;
}

// Building it takes seconds, on a busy machine many.
describe('the demo notebook', { timeout: 240_000 }, () => {
  const shelf = mkdtempSync(path.join(tmpdir(), 'laydown-demo-'));
  const built = path.join(shelf, 'built.laydown');
  beforeAll(() => buildDemoNotebook(built, print), 240_000);
  afterAll(() => rmSync(shelf, { recursive: true, force: true }));

  it('has the same entries each time, and the file appears only whole', async () => {
    const { folder } = new TestBench();
    const file = path.join(folder, 'again.laydown');
    await buildDemoNotebook(file, print);
    expect(readdirSync(folder).filter((name) => name.startsWith('.demo'))).toEqual([]);
    const entries = await entriesOf(built);
    expect(entries.length).toBeGreaterThan(200);
    expect(await entriesOf(file)).toEqual(entries);
  });

  it('leaves nothing behind when it fails', async () => {
    const folder = path.join(new TestBench().folder, 'demo');
    const file = path.join(folder, 'demo.laydown');
    const failing = async () => {
      throw new Error('no pages today');
    };
    await expect(buildDemoNotebook(file, { ...print, renderReport: failing })).rejects.toThrow('no pages today');
    expect(readdirSync(folder)).toEqual([]);
  });

  it('has something true for every screen, and every result follows from its readings', async () => {
    const bench = new TestBench();
    const file = path.join(bench.folder, 'demo.laydown');
    copyFileSync(built, file);
    await bench.application.open(file);
    bench.time = Date.parse('2026-03-06T08:00:00.000Z');
    expect(await bench.do('record.verify', {})).toMatchObject({ intact: true, problems: [] });

    const tests = await bench.do('tests.list', { state: 'all' });
    const states = new Set(tests.map(({ state }) => state));
    expect(states).toEqual(new Set(['running', 'finished', 'outdated']));
    expect(new Set(tests.map(({ verdict }) => verdict))).toEqual(new Set(['meets', 'falls short', 'undecided', 'no limit']));
    expect(tests.map(({ methodId }) => methodId)).toEqual(
      expect.arrayContaining([
        ...['test-fluids', 'contact-angle', 'treatment-decay', 'lamination-bond', 'bond-build', 'light-exposure'],
        ...['tape-adhesion', 'crinkle', 'scratch', 'jaw-pick-off', 'lamination-recheck'],
        ...['residual-solvent', 'odour-triangle', 'odour-intensity', 'coat-weight', 'viscosity-cup', 'let-down'],
      ]),
    );

    // What was read out of calibration or past its last day: the last bond and the last film.
    const doubtful = await Promise.all(tests.map(async ({ testId }) => (await bench.do('test.get', { testId })).live?.result.flags.filter(({ code }) => code === 'calibration' || code === 'expired-fluid') ?? []));
    expect(doubtful.flat().map(({ text }) => text)).toEqual([
      'Read with Tensile tester, TT-03 on 2026-03-13, whose calibration ended on 2026-03-12.',
      'Read with Test fluids 30 to 60 mN/m, lot TF-4 on 2026-03-13, which expired on 2026-02-28.',
    ]);

    const [waiting, signed] = await bench.do('approvals.list', {});
    expect(waiting).toMatchObject({ job: 'J-4418', standing: 'blocked', standingText: 'Of its lines, 1 is undecided: Lamination bond strength, 7 days after lamination.' });
    expect(signed).toMatchObject({ job: 'J-4418', standing: 'signed', standingText: 'By Abena Quist.' });

    expect((await bench.do('samples.list', {})).total).toBe(26);
    expect(new Set((await bench.do('materials.list', {})).map(({ kind }) => kind))).toEqual(new Set(['film', 'ink', 'adhesive', 'laminate', 'other']));
    for (const kind of ['reading.corrected', 'condition.corrected', 'row.voided', 'row.remarked', 'trace.read']) {
      expect((await bench.do('record.list', { kind })).total, kind).toBeGreaterThan(0);
    }
    const [set] = await bench.do('trialSets.list', {});
    expect(set).toMatchObject({ trials: 11, control: 'R0', responses: 3 });
    const trials = await bench.do('trialSet.get', { trialSetId: set!.trialSetId });
    const words = trials.trials.map(({ cells }) => cells['lamination-bond/mean']!.difference?.word);
    expect(new Set(words)).toEqual(new Set([undefined, 'better', 'worse', 'open']));
    expect(trials.trials.every(({ desirability }) => desirability !== null)).toBe(true);
    const [own] = await bench.do('inHouseMethods.list', {});
    expect(own).toMatchObject({ title: 'Thumb-twist rub', version: '2', state: 'fit to decide' });
    const [study] = await bench.do('studies.list', { methodId: 'lamination-bond' });
    expect(study).toMatchObject({ methodId: 'lamination-bond', appraisers: ['IR', 'TV', 'AQ'] });
    expect(trials.responses[0]!.studyText).toBe(study!.text);
    const reports = await bench.do('reports.list', {});
    expect(reports.map(({ number, verdict }) => [number, verdict])).toEqual([
      ['LR-2026-002', 'falls short'],
      ['LR-2026-001', 'falls short'],
    ]);
    expect(reports[1]!.replacedBy).toBe(reports[0]!.reportId);
    const today = await bench.do('today.get', {});
    expect(today.due.length).toBeGreaterThan(2);
    expect(today.due.map(({ what }) => what)).toEqual(expect.arrayContaining(['Test the treatment again: Q-26-001', 'Check the lamination again after 7 days: Q-26-009', 'Read the patches at 288 h: Q-26-082']));
  });

  it('is what a large notebook for `npm run bench` is made of', async () => {
    const { folder } = new TestBench();
    const clock = { now: () => new Date(Date.parse('2026-03-20T08:00:00.000Z')), ulid: monotonicFactory(() => 0.5) };
    const demo = await NotebookStore.open(built, clock);
    const large = await makeLargeNotebook(path.join(folder, 'large.laydown'), demo, { samples: 6, tests: 60, readings: 1_200, traces: 3 }, clock);
    const count = (table: string) => large.one<{ count: number }>(`SELECT count(*) AS count FROM ${table}`)!.count;
    expect([count('sample'), count('test')]).toEqual([6, 60]);
    expect(count('trace')).toBeGreaterThanOrEqual(3);
    // So few tests come only near to a number of readings.
    expect(count('reading')).toBeGreaterThan(600);
    expect(count('reading')).toBeLessThan(2_400);
    for (const store of [demo, large]) store.close();
  });
});
