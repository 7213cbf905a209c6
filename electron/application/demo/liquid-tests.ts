import type { DemoBench } from './demo-bench.ts';
import type { DemoLots } from './demo-materials.ts';
import type { DemoSamples } from './demo-samples.ts';

/** Of D1200 no. 4, mm²/s for each second beyond 4.49 s. */
const CUP_FACTOR = 3.85;
const CUP_OFFSET_S = 4.49;

/** Ink as delivered in its can: how it runs, and how much diluent brings it to the press. */
export async function testInkInTheCan(bench: DemoBench, lots: DemoLots): Promise<void> {
  const { sampleId } = await bench.do('sample.add', { code: 'Q-26-081', product: 'dumpling pouch 600 g', job: 'J-4418', roll: 'can 2', note: 'Ink of trial R7 before the press', lotIds: [lots.inkR7] });
  const cup = await bench.start(sampleId, 'viscosity-cup', { cup: 'D1200 no. 4', temperatureC: '24,8', densityGCm3: '0,94', stirred: 'two minutes, strained' });
  await bench.type(cup, [0, 1, 2].map(() => ({ seconds: bench.typed(58 + 0.5 * bench.random.normal(), 1) })));
  await bench.do('test.finish', { testId: cup, remark: '' });

  const letDown = await bench.start(sampleId, 'let-down', {
    cup: 'D1200 no. 4', targetSeconds: '24', inkG: '500', batchKg: '80', ink: 'R7 as delivered', inkSolidsPct: '38', diluent: 'ethyl acetate', temperatureC: '24,8',
  });
  const seconds = (pct: number) => (206 * Math.exp(-0.058 * pct) * (1 + 0.01 * bench.random.normal())) / CUP_FACTOR + CUP_OFFSET_S;
  await bench.type(letDown, [0, 5, 10, 15, 20].map((pct) => ({ diluentG: bench.typed((500 * pct) / (100 - pct), 1), seconds: bench.typed(seconds(pct), 1) })));
  await bench.do('test.finish', { testId: letDown, remark: 'Drawn down beside R0 before the batch was let down.' });
}

/** Dry ink on the trial's print, stripped from five pieces across the web. */
export async function testCoatWeight(bench: DemoBench, samples: DemoSamples): Promise<void> {
  const testId = await bench.start(samples.dumplingR7, 'coat-weight', { areaCm2: '100', solidsPct: '30', dryDensityGCm3: '1,3', strippedWith: 'acetone' });
  await bench.do('test.setLimits', { testId, limits: [{ property: 'dry', lower: 1.5, upper: 2.1, source: 'Press standard' }], rule: 'guarded', reason: '' });
  const places = ['operator side', 'left', 'middle', 'right', 'drive side'];
  await bench.type(
    testId,
    places.map((label, place) => {
      const bareG = 0.1685 + 0.0006 * bench.random.normal();
      const coatMg = 17.6 + 0.35 * (place - 2) + 0.3 * bench.random.normal();
      return { label, coatedG: bench.typed(bareG + coatMg / 1000, 4), bareG: bench.typed(bareG, 4) };
    }),
  );
  await bench.do('test.finish', { testId, remark: '' });
}
