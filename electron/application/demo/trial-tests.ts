import { seededRandom } from '../../../shared-lib/statistics/random.ts';
import type { DemoBench } from './demo-bench.ts';
import type { DemoLots } from './demo-materials.ts';
import type { DemoSamples } from './demo-samples.ts';
import { demoTrials, type DemoTrial } from './trial-formulations.ts';

/** What wax and promoter do to the print (invented): wax comes to the surface, the promoter ties it, less so where there is much wax. */
const truth = {
  bondNPer15mm: ({ name, waxPct, promoterPct }: DemoTrial) => (name === 'R0' ? 3.46 : 3.55 - 0.2 * (waxPct - 1) + 0.3 * promoterPct - 0.09 * promoterPct * (waxPct - 1)),
  wettingMNm: ({ name, waxPct, promoterPct }: DemoTrial) => (name === 'R0' ? 38.2 : 40.1 - 1.3 * (waxPct - 1) + 0.5 * promoterPct),
  retained: ({ name, promoterPct }: DemoTrial) => (name === 'R0' ? 0.71 : 0.84 - 0.035 * promoterPct),
};

/**
 * A sample of each trial, its bond, wetting tension and light fastness. R0 and R7 were laminated before: the bond that
 * was measured then counts. Readings are pasted, as from the list of a machine.
 */
export async function testTrials(bench: DemoBench, lots: DemoLots, samples: DemoSamples, trialIds: ReadonlyMap<string, string>): Promise<void> {
  // A stream of its own: more trials must not move the readings of the rest of the demo.
  const noise = seededRandom(77);
  const known: Record<string, string> = { R0: samples.dumplingR0, R7: samples.dumplingR7 };
  const around = (mean: number, spread: number) => mean + spread * noise.normal();
  const link = (trial: DemoTrial, sampleId: string) => bench.do('trial.linkSample', { trialId: trialIds.get(trial.name)!, sampleId });
  for (const [index, trial] of demoTrials.entries()) {
    const laminated = known[trial.name];
    if (laminated !== undefined) await link(trial, laminated);
    // The control is compared with every trial, so it is worth more specimens.
    const strips = trial.name === 'R0' ? 10 : trial.name === 'R7' ? 0 : 6;
    const sampleId = strips === 0 ? laminated! : await addSample(bench, lots, trial, index);
    if (strips > 0) {
      await link(trial, sampleId);
      const testId = await bench.start(sampleId, 'lamination-bond', { hoursSinceLamination: '168' });
      const lines = Array.from({ length: strips }, () => `${bench.typed(around(truth.bondNPer15mm(trial), 0.13), 2)}\t\t${noise.uniform() < 0.7 ? 'c' : 'a'}`);
      await bench.pasteAndFinish(testId, 'forceN', lines);
    }
    const fluids = await bench.start(sampleId, 'test-fluids', { temperatureC: '23' });
    const brackets = Array.from({ length: 6 }, () => {
      const held = Math.floor(around(truth.wettingMNm(trial), 1.1));
      return `${held}\t${held + 1}`;
    });
    await bench.pasteAndFinish(fluids, 'wetsMNm', brackets);
    const light = await bench.start(sampleId, 'light-exposure', { irradianceWPerM2: '42' });
    const patches = [1, 2, 3].flatMap((patch) => {
      const start = around(1.12, 0.01);
      return [`${patch}\t0\t${bench.typed(start, 2)}`, `${patch}\t96\t${bench.typed(start * around(truth.retained(trial), 0.012), 2)}`];
    });
    await bench.pasteAndFinish(light, 'series', patches);
  }
}

async function addSample(bench: DemoBench, lots: DemoLots, { name }: DemoTrial, index: number): Promise<string> {
  const { sampleId } = await bench.do('sample.add', {
    code: `Q-26-0${20 + index}`,
    product: 'dumpling pouch 600 g',
    job: 'J-4431',
    roll: `roll ${index}, 300 m`,
    note: `Trial ${name}`,
    lotIds: [lots.petFresh, lots.adhesive, lots.pe],
  });
  return sampleId;
}

/** Peel traces of six strips, the plateau read off by each person twice; one takes in the end of the first peak. */
export async function studyReadingOfTraces(bench: DemoBench): Promise<void> {
  const noise = seededRandom(31);
  const bias: Record<string, number> = { IR: 0, TV: 0.15, AQ: 0.02 };
  const parts = Array.from({ length: 6 }, () => 3.2 + 0.5 * noise.normal());
  const readings = parts.flatMap((strength, part) =>
    Object.entries(bias).flatMap(([appraiser, higher]) =>
      ['1', '2'].map((trial) => ({ part: `strip ${part + 1}`, appraiser, trial, value: Math.round((strength + higher + 0.05 * noise.normal()) * 100) / 100 })),
    ),
  );
  await bench.do('study.record', {
    methodId: 'lamination-bond',
    property: 'mean',
    readings,
    remark: 'Six traces of one roll, the plateau read off by eye twice. Teodor takes in the end of the first peak and reads higher.',
  });
}
