import { performance } from 'node:perf_hooks';
import { Application } from '../../electron/application/application.ts';
import { systemClock } from '../../electron/store/clock.ts';
import type { CallInput, CallName, CallOutput } from '../../shared-lib/api.ts';
import { compare } from './compare.ts';
import { largeFiles, SIZE } from './large-files.ts';

const { folder, times, ...files } = await largeFiles();

class Bench {
  readonly application = new Application({
    clock: systemClock(),
    settingsFolder: `${folder}/settings`,
    notebooksFolder: folder,
    version: 'bench',
    renderReport: () => Promise.resolve(new Uint8Array(1)),
    renderPlan: () => Promise.reject(new Error('not asked for')),
    renderLabels: () => Promise.reject(new Error('not asked for')),
    renderApproval: () => Promise.reject(new Error('not asked for')),
    emit: () => undefined,
    timers: { after: () => () => undefined },
  });
  readonly file: string;
  /** Of an entry in the middle of the record. */
  day = '';
  /** A running test, its sheet's first cell that takes a number, and a sample. */
  at = { testId: '', sampleId: '' };

  constructor(file: string) {
    this.file = file;
  }

  async do<Name extends CallName>(name: Name, input: CallInput<Name>): Promise<CallOutput<Name>> {
    const answer = await this.application.call(name, input);
    if (!answer.ok) throw new Error(`${name}: ${answer.problem.message}`);
    return answer.value as CallOutput<Name>;
  }

  async open(): Promise<void> {
    const answer = await this.application.open(this.file);
    if (!answer.ok) throw new Error(answer.problem.message);
  }

  async begin(): Promise<void> {
    const session = await this.do('session.get', {});
    const { total } = await this.do('record.list', { limit: 1 });
    const [middle] = (await this.do('record.list', { limit: 1, offset: Math.floor(total / 2) })).entries;
    this.day = `${middle!.recordedAt.slice(0, 10)}T00:00:00.000Z`;
    await this.do('session.takeBench', { personId: session.people[0]!.personId });
    const { samples } = await this.do('samples.list', {});
    const { test } = await this.do('test.start', { sampleId: samples[0]!.sampleId, methodId: 'test-fluids' });
    this.at = { testId: test.testId, sampleId: samples[0]!.sampleId };
  }
}

const timed = (work: () => Promise<unknown>) => async () => {
  const started = performance.now();
  await work();
  return performance.now() - started;
};

const [large, demo] = [new Bench(files.large), new Bench(files.demo)];

const inUse = async () => {
  // What was let go of before is given back only between two turns.
  for (let turn = 0; turn < 3; turn++) {
    globalThis.gc!();
    await new Promise((resolve) => setTimeout(resolve, 100));
  }
  const { heapUsed, external } = process.memoryUsage();
  return (heapUsed + external) / 1e6;
};
const opened = async (bench: Bench) => {
  const before = await inUse();
  const started = performance.now();
  await bench.open();
  return { ms: performance.now() - started, mb: (await inUse()) - before };
};
const [openedLarge, openedDemo] = [await opened(large), await opened(demo)];
const once = { runs: 1, peer: 'the demo notebook' };
const target = { atMost: Math.ceil(times * 1.5) };
await compare({ what: `opening ${SIZE.tests} tests, ${Math.round(times)} times the file`, ...once, target, unit: 'ms', ours: () => openedLarge.ms, theirs: () => openedDemo.ms });
await compare({ what: 'memory that it takes once open', ...once, target, unit: 'MB', ours: () => openedLarge.mb, theirs: () => openedDemo.mb });

await large.begin();
await demo.begin();

const SCREENS: [what: string, work: (bench: Bench) => Promise<unknown>][] = [
  ['Today', (bench) => bench.do('today.get', {})],
  // As many lines of either: the demo has no more.
  ['the first 25 samples', (bench) => bench.do('samples.list', { limit: 25 })],
  ['samples found by a word', (bench) => bench.do('samples.list', { search: 'dumpling', limit: 15 })],
  ['a page of samples further down', (bench) => bench.do('samples.list', { limit: 25, offset: bench === large ? 4_000 : 0 })],
  ['the last finished tests by one method', (bench) => bench.do('tests.list', { state: 'finished', search: 'bond', limit: 10 })],
  ['one sample with its tests', (bench) => bench.do('sample.get', { sampleId: bench.at.sampleId })],
  ['one bench sheet', (bench) => bench.do('test.get', { testId: bench.at.testId })],
  ['the newest 100 entries', (bench) => bench.do('record.list', {})],
  ['entries found by a word', (bench) => bench.do('record.list', { search: 'wets' })],
  ['entries of one day', (bench) => bench.do('record.list', { from: bench.day, until: `${bench.day.slice(0, 10)}T23:59:59.999Z` })],
  ['everything found by a code', (bench) => bench.do('search.find', { search: 'Q-26-004' })],
  ['the trial set', async (bench) => bench.do('trialSets.list', {})],
];
for (const [what, work] of SCREENS) {
  await compare({ what, peer: 'the demo notebook', target: { atMost: 10 }, unit: 'ms', runs: 9, ours: timed(() => work(large)), theirs: timed(() => work(demo)) });
}

let value = 30;
const enter = (bench: Bench) => bench.do('reading.enter', { testId: bench.at.testId, row: `r${1 + (value % 9)}`, key: 'label', typed: `place ${++value}`, reason: 'moved' });
await compare({ what: 'a reading typed, recorded and answered', peer: 'the demo notebook', target: { atMost: 1.5 }, unit: 'ms', runs: 41, ours: timed(() => enter(large)), theirs: timed(() => enter(demo)) });
/** There must be something to write. */
const write = async (bench: Bench) => {
  await enter(bench);
  return timed(() => bench.do('notebook.checkpoint', {}))();
};
await compare({ what: 'writing the whole file', ...once, target, unit: 'ms', ours: () => write(large), theirs: () => write(demo) });

await large.application.close();
await demo.application.close();
