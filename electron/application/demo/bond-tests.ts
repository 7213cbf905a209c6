import type { DemoBench, TypedRow } from './demo-bench.ts';
import type { DemoSamples } from './demo-samples.ts';
import { peelTraceCsv } from './peel-trace-csv.ts';

const WIDTH_MM = 15;
const BUILD_HOURS = [2, 4, 8, 14, 20, 26, 38, 50, 62, 74, 86];
const dumplingLimit = { property: 'mean', lower: 2.5, upper: null, source: 'Customer specification QF-11, revision B' };
const coffeeLimit = { property: 'mean', lower: 1.8, upper: null, source: 'In-house specification' };
const slitLimit = { property: 'hoursUntilRequired', lower: null, upper: 72, source: 'In-house specification: slit on the third day' };

/** A polyurethane adhesive builds its bond over days, N per 15 mm. */
function bondAfter(hours: number, plateau: number): number {
  return plateau * (1 - Math.exp(-hours / 38));
}

const conditions = (hours: number): TypedRow => ({
  stripWidthMm: String(WIDTH_MM),
  speedMmPerMin: '100',
  geometry: 'T-peel',
  pulledWeb: 'outer PET',
  hoursSinceLamination: String(hours),
  temperatureC: '23',
  relativeHumidityPct: '50',
});

function specimens(bench: DemoBench, mean: number, mode: string, count: number): TypedRow[] {
  return Array.from({ length: count }, () => ({ forceN: bench.typed(mean * (1 + 0.06 * bench.random.normal()), 2), mode }));
}

async function startBond(bench: DemoBench, sampleId: string, hours: number, limit: typeof dumplingLimit): Promise<string> {
  const testId = await bench.start(sampleId, 'lamination-bond', conditions(hours));
  await bench.limit(testId, limit);
  return testId;
}

/** After one day; the hours were corrected when it had been finished, so that it waits to be finished again. */
export async function testControlAfterOneDay(bench: DemoBench, samples: DemoSamples): Promise<string> {
  const testId = await startBond(bench, samples.dumplingR0, 42, dumplingLimit);
  await bench.type(testId, specimens(bench, bondAfter(24, 3.5), 'a', 6));
  await bench.do('test.finish', { testId, remark: 'Still curing' });
  await bench.do('condition.enter', { testId, key: 'hoursSinceLamination', typed: '24', reason: 'Laminated on the late shift, not the early one' });
  return testId;
}

/** After a week; one specimen tore, so that its bond is only known to be higher. */
export async function testControlAfterOneWeek(bench: DemoBench, samples: DemoSamples): Promise<string> {
  const testId = await startBond(bench, samples.dumplingR0, 168, dumplingLimit);
  const rows = specimens(bench, bondAfter(168, 3.5), 'c', 6);
  rows[3] = { forceN: '4,02', mode: 't' };
  await bench.type(testId, rows);
  await bench.do('row.remark', { testId, row: 'r4', remark: 'PET tore at 22 mm; edge without a nick' });
  await bench.do('test.finish', { testId, remark: '' });
  return testId;
}

/** The trial ink: a little lower, one specimen far out for a reason that was seen. */
export async function testTrialAfterOneWeek(bench: DemoBench, samples: DemoSamples): Promise<string> {
  const testId = await startBond(bench, samples.dumplingR7, 168, dumplingLimit);
  const rows = specimens(bench, bondAfter(168, 3.25), 's', 7);
  rows[5] = { forceN: '1,71', mode: 'l' };
  await bench.type(testId, rows);
  await bench.do('row.remark', { testId, row: 'r6', remark: 'Streak of low ink weight across the strip; kept, for it is in the roll as well' });
  await bench.do('test.finish', { testId, remark: '' });
  return testId;
}

/** From the traces of the testing machine. */
export async function testCoffeeFromTraces(bench: DemoBench, samples: DemoSamples): Promise<string> {
  const testId = await startBond(bench, samples.coffee, 168, coffeeLimit);
  for (let specimen = 1; specimen <= 5; specimen++) {
    const mean = bondAfter(168, 2.35) * (1 + 0.05 * bench.random.normal());
    const name = `Q-26-006 strip ${specimen}.csv`;
    const bytes = Buffer.from(peelTraceCsv(bench.random, mean, specimen), 'utf8').toString('base64');
    const { reading } = await bench.do('trace.preview', { name, bytes, reading: {} });
    await bench.do('trace.read', { testId, row: `r${specimen}`, key: 'trace', name, bytes, reading });
    bench.clock.pass(240);
    await bench.do('reading.enter', { testId, row: `r${specimen}`, key: 'mode', typed: specimen === 2 ? 'c' : 'a' });
  }
  await bench.do('test.finish', { testId, remark: '' });
  return testId;
}

/** Eight weeks old, and the tester's calibration had ended the day before. */
export async function testCoffeeWithExpiredTester(bench: DemoBench, samples: DemoSamples): Promise<void> {
  const testId = await startBond(bench, samples.coffee, 1344, coffeeLimit);
  await bench.type(testId, specimens(bench, bondAfter(1344, 2.35), 'a', 5));
  await bench.do('test.finish', { testId, remark: 'The tester is booked for its calibration on Monday' });
}

/** How the bond of the trial ink builds up over its first four days; laminated on the late shift of the 15th. */
export async function testTrialBuildUp(bench: DemoBench, samples: DemoSamples): Promise<string> {
  const testId = await bench.start(samples.dumplingR7, 'bond-build', {
    requiredNPer15mm: '2,5',
    laminatedOn: '2026-01-15',
    stripWidthMm: String(WIDTH_MM),
    speedMmPerMin: '100',
    storageTemperatureC: '23',
  });
  await bench.do('test.setLimits', { testId, limits: [slitLimit], rule: 'guarded', reason: '' });
  const lines = BUILD_HOURS.map((hours) => `${hours}\t${bench.typed(bondAfter(hours, 3.25) * (1 + 0.04 * bench.random.normal()), 2)}\t\t${hours < 20 ? 'c' : 'a'}`);
  // Pasted, as from the machine's list: worked out anew after every single cell, the fit would take most of the demo's time.
  await bench.do('readings.paste', { testId, row: 'r1', key: 'hours', pasted: lines.join('\n') });
  await bench.do('test.finish', { testId, remark: 'Strips cut from the stored length at each time' });
  return testId;
}
