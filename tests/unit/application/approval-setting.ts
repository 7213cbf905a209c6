import type { Approval } from '../../../shared-lib/notebook/approval-views.ts';
import type { PlanContent } from '../../../shared-lib/plan/plan.ts';
import { frozenPlan } from '../plan/frozen-plan.ts';
import { testBench, type TestBench } from './open-application.ts';

export const PASS = 'four quiet rollers';
export const JOB = 'J-100';

/** Gloss of one limit: the quickest test there is. 45° gloss ≥ 70 is asked for. */
export const glossPlan: PlanContent = {
  ...frozenPlan,
  title: 'Gloss only',
  dropped: [],
  lines: [
    {
      lineId: 'gloss printing+0',
      methodId: 'gloss',
      moment: { from: 'printing', hours: 0 },
      preparation: '',
      conditions: {},
      replicates: 3,
      limits: [{ property: 'gloss', lower: 70, upper: null, source: 'common practice' }],
      reasons: [{ stress: '', text: 'The customer looks at it.' }],
    },
  ],
};

export interface Setting {
  bench: TestBench;
  imke: string;
  abena: string;
  planId: string;
}

export async function setting(): Promise<Setting> {
  const bench = await testBench();
  const { personId: imke } = (await bench.do('session.get', {})).atBench!;
  const { personId: abena } = await bench.do('person.add', { name: 'Abena Quist', initials: 'AQ', role: 'quality lead' });
  for (const personId of [imke, abena]) await bench.do('passphrase.set', { personId, passphrase: PASS });
  const { planId } = await bench.do('plan.add', { content: glossPlan });
  return { bench, imke, abena, planId };
}

export async function glossTest(bench: TestBench, readings: number[], { code = 'Q-1', instrument = '' } = {}): Promise<string> {
  const { test } = await bench.startTest('gloss', code);
  if (instrument) await bench.do('condition.enter', { testId: test.testId, key: 'instrument', typed: instrument });
  for (const [index, value] of readings.entries()) await bench.do('reading.enter', { testId: test.testId, row: `r${index + 1}`, key: 'gloss', typed: String(value) });
  await bench.do('test.finish', { testId: test.testId, remark: '' });
  return test.testId;
}

/** With all samples of the job unless others are named. */
export async function draft({ bench, planId }: Setting, more: object = {}): Promise<Approval> {
  const { samples } = await bench.do('approval.job', { job: JOB });
  const sampleIds = samples.map(({ sampleId }) => sampleId);
  return bench.do('approval.draft', { planId, product: 'dumpling pouch 600 g', job: JOB, customer: 'Marrowfield Foods', pressRun: 'run 1', lotIds: [], sampleIds, note: '', ...more });
}
