import type { FollowedPlan } from '../../../shared-lib/notebook/plan-views.ts';
import { endUseById } from '../../../shared-lib/plan/end-uses.ts';
import type { PlanContent } from '../../../shared-lib/plan/plan.ts';
import { proposeLines } from '../../../shared-lib/plan/propose-lines.ts';
import type { DemoBench } from './demo-bench.ts';
import type { DemoLots } from './demo-materials.ts';
import type { DemoSamples } from './demo-samples.ts';

const DAY_MS = 86_400_000;
const noBooth = 'The viewing booth is away for new lamps until April';

/** The proposal for an end use, without matching by eye: the lab has no booth at the moment. */
function planFor(endUse: string, title: string, product: string, customer: string): PlanContent {
  const { stresses } = endUseById(endUse)!;
  const proposed = proposeLines(stresses);
  const dropped = proposed.filter(({ methodId }) => methodId === 'match-by-eye').map(({ lineId, methodId, moment, preparation }) => ({ lineId, methodId, moment, preparation, reason: noBooth }));
  return { title, product, customer, endUse, stresses, lines: proposed.filter(({ methodId }) => methodId !== 'match-by-eye'), dropped, note: '' };
}

const pouchPlan = planFor('frozen-pouch', 'Dumpling pouch, frozen', 'dumpling pouch 600 g', 'Marrowfield Foods');

/** The customer asks for a firmer bond than is common. */
function withFirmerBond(content: PlanContent): PlanContent {
  const lines = content.lines.map((line) =>
    line.lineId === 'lamination-bond, 7 days after lamination' ? { ...line, limits: [{ property: 'mean', lower: 2.5, upper: null, source: 'Customer specification QF-11, revision B' }] } : line,
  );
  return { ...content, lines };
}

/**
 * Tests that the sample has from about the day on which a line was due; of a line without a date the newest, where the plan has no
 * other line by that method. None where the specimens went through something before.
 */
async function takeTests(bench: DemoBench, { sampleId, lines }: FollowedPlan): Promise<void> {
  const taken = new Set<string>();
  for (const { line, dueAt, mayTake } of lines) {
    if (line.preparation !== '') continue;
    const only = lines.filter((other) => other.line.methodId === line.methodId).length === 1;
    const near = mayTake.find(({ testId, startedAt }) => !taken.has(testId) && (dueAt === null ? only : Math.abs(Date.parse(startedAt) - Date.parse(dueAt)) < DAY_MS));
    if (!near) continue;
    taken.add(near.testId);
    await bench.do('samplePlan.takeTest', { sampleId, lineId: line.lineId, testId: near.testId });
  }
}

export interface DemoPlans {
  pouch: string;
  brick: string;
  sachet: string;
}

/** A plan for each of the three products. */
export async function makePlans(bench: DemoBench): Promise<DemoPlans> {
  const add = async (content: PlanContent) => (await bench.do('plan.add', { content })).planId;
  return {
    pouch: await add(pouchPlan),
    brick: await add(planFor('ground-coffee-brick', 'Ground coffee brick', 'ground coffee brick', 'Stillbeck Coffee')),
    sachet: await add(planFor('shelf-sachet', 'Sachet for the window shelf', 'window-shelf sachet', '')),
  };
}

/** The control follows the first version of its plan, and a job of this week the second. */
export async function followPlans(bench: DemoBench, { pouch, brick, sachet }: DemoPlans, lots: DemoLots, samples: DemoSamples): Promise<void> {
  await takeTests(bench, await bench.do('samplePlan.follow', { sampleId: samples.dumplingR0, planId: pouch, printedAt: null, laminatedAt: '2026-01-15T13:30:00.000Z' }));
  await takeTests(bench, await bench.do('samplePlan.follow', { sampleId: samples.coffee, planId: brick, printedAt: null, laminatedAt: null }));
  await takeTests(bench, await bench.do('samplePlan.follow', { sampleId: samples.sachetYellow, planId: sachet, printedAt: null, laminatedAt: null }));

  await bench.do('plan.change', { planId: pouch, content: withFirmerBond(pouchPlan), reason: 'Specification of the customer of February' });
  const { sampleId } = await bench.do('sample.add', { code: 'Q-26-090', product: 'dumpling pouch 600 g', job: 'J-4440', roll: 'roll 1, 300 m', note: '', lotIds: [lots.petFresh, lots.inkR0, lots.adhesive, lots.pe] });
  await bench.do('samplePlan.follow', { sampleId, planId: pouch, printedAt: '2026-03-12T05:30:00.000Z', laminatedAt: null });
  await testOnPress(bench, sampleId);
}

/** Tape on the running press: little comes off. */
async function testOnPress(bench: DemoBench, sampleId: string): Promise<void> {
  const { test } = await bench.do('samplePlan.startLine', { sampleId, lineId: 'tape-adhesion, on press' });
  const { testId } = test;
  await bench.do('condition.enter', { testId, key: 'tape', typed: '25 mm, lot 0717, good until 2026-10' });
  await bench.type(testId, Array.from({ length: 3 }, () => ({ removedPct: bench.typed(1 + 0.4 * Math.abs(bench.random.normal()), 1) })));
  await bench.do('test.finish', { testId, remark: 'Beside the machine, at 180 m/min' });
}
