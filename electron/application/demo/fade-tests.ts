import type { DemoBench } from './demo-bench.ts';
import type { DemoSamples } from './demo-samples.ts';

const limit = { property: 'exposureToLimit', lower: 120, upper: null, source: 'Customer specification for window shelves, revision A' };
const CONDITIONS = { irradianceWPerM2: '42', blackPanelC: '63', relativeHumidityPct: '45' };
const EXPOSURES_H = [0, 24, 48, 96, 144, 192];
const PATCHES = 3;

/** A solid patch: density at the start and the hours in which it would lose 30 % of it, fading by the first order. */
interface Patch {
  sample: keyof DemoSamples;
  colour: string;
  density: number;
  hoursToEndpoint: number;
}

const control: Patch[] = [
  { sample: 'sachetYellow', colour: 'yellow', density: 1.12, hoursToEndpoint: 150 },
  { sample: 'sachetMagenta', colour: 'magenta', density: 1.38, hoursToEndpoint: 108 },
  { sample: 'sachetCyan', colour: 'cyan', density: 1.46, hoursToEndpoint: 900 },
];

/** The three colours of the control ink, as copied from the densitometer's list. */
export async function testControlFade(bench: DemoBench, samples: DemoSamples): Promise<string[]> {
  const finished: string[] = [];
  for (const patch of control) {
    const testId = await startFade(bench, samples[patch.sample]);
    await bench.do('readings.paste', { testId, row: 'r1', key: 'series', pasted: fading(bench, patch, EXPOSURES_H) });
    await bench.do('test.finish', { testId, remark: '' });
    finished.push(testId);
  }
  return finished;
}

/** The trial ink is still under the lamp. */
export async function startTrialFade(bench: DemoBench, samples: DemoSamples): Promise<void> {
  const patch: Patch = { sample: 'sachetTrial', colour: 'yellow', density: 1.09, hoursToEndpoint: 210 };
  const testId = await startFade(bench, samples[patch.sample]);
  await bench.do('readings.paste', { testId, row: 'r1', key: 'series', pasted: fading(bench, patch, EXPOSURES_H.slice(0, 3)) });
}

async function startFade(bench: DemoBench, sampleId: string): Promise<string> {
  const testId = await bench.start(sampleId, 'light-exposure', CONDITIONS);
  await bench.limit(testId, limit);
  bench.clock.pass(600);
  return testId;
}

/** Lines of patch, exposure in hours and density, with the scatter of a densitometer. */
function fading(bench: DemoBench, { colour, density, hoursToEndpoint }: Patch, exposures: number[]): string {
  const ratePerHour = -Math.log(0.7) / hoursToEndpoint;
  const lines: string[] = [];
  for (let patch = 1; patch <= PATCHES; patch++) {
    const start = density * (1 + 0.01 * bench.random.normal());
    for (const hours of exposures) {
      const left = start * Math.exp(-ratePerHour * hours) + 0.006 * bench.random.normal();
      lines.push([`${colour} ${patch}`, String(hours), bench.typed(left, 2)].join('\t'));
    }
  }
  return lines.join('\n');
}
