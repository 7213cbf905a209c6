import type { Limit } from '../../../shared-lib/method/method.ts';
import type { DemoBench, TypedRow } from './demo-bench.ts';
import type { DemoLots } from './demo-materials.ts';
import type { DemoSamples } from './demo-samples.ts';

const SPECIFICATION = 'Customer specification QF-11, revision B';
const tapeLimit = { property: 'gradeD3359', lower: 4, upper: null, source: SPECIFICATION };
const crinkleLimit = { property: 'grade', lower: 4, upper: null, source: SPECIFICATION };
const scratchLimit = { property: 'load', lower: 2, upper: null, source: 'In-house specification' };
const jawLimit = { property: 'margin', lower: 10, upper: null, source: 'In-house specification: 10 °C above the jaws of the line' };
const bubbleLimit = { property: 'defects', lower: null, upper: 40, source: 'In-house specification' };

/** Bubbles per m² without ink and at 100 % coverage, a day after lamination: solvent kept in thick ink gathers there. */
const BUBBLES_BARE = 6;
const BUBBLES_SOLID = 60;
const FRAME_CM2 = 400;
/** Place across the web in mm and ink coverage there: bare seal edge, light tone, solids, double print. */
const LANES = [
  { acrossMm: 60, coveragePct: 0 },
  { acrossMm: 240, coveragePct: 30 },
  { acrossMm: 430, coveragePct: 100 },
  { acrossMm: 610, coveragePct: 100 },
  { acrossMm: 800, coveragePct: 160 },
  { acrossMm: 1040, coveragePct: 0 },
];
const SEAL_C = 170;
const JAW_STEPS_C = [150, 160, 170, 180, 190, 200];
const SEALS = 3;

async function testWith(bench: DemoBench, sampleId: string, methodId: string, conditions: TypedRow, limit: Limit, firstKey: string, lines: string[]): Promise<void> {
  const testId = await bench.start(sampleId, methodId, conditions);
  await bench.limit(testId, limit);
  await bench.pasteAndFinish(testId, firstKey, lines);
}

/** Tape, crinkle and scratch on the prints of the control and of the trial, whose wax makes it harder to scratch. */
export async function testPrints(bench: DemoBench, samples: DemoSamples): Promise<void> {
  const tape = { moment: 'f', hoursSincePrinting: '48', tape: '25 mm, lot 0717, good until 2026-10', cuts: '1', dwellS: '90', temperatureC: '23', relativeHumidityPct: '50' };
  // Squares removed of 100.
  await testWith(bench, samples.sachetYellow, 'tape-adhesion', tape, tapeLimit, 'squaresRemoved', squares(bench, 0.012));
  await testWith(bench, samples.sachetTrial, 'tape-adhesion', tape, tapeLimit, 'squaresRemoved', squares(bench, 0.06));
  await testWith(bench, samples.sachetYellow, 'crinkle', { flexes: '10', observer: 'Imke Rasmund' }, crinkleLimit, 'grade', ['5\t0', '5\t0', '4\t0,5', '5\t0']);
  const stylus = { tool: 's', tipRadiusMm: '0,5', speedMmPerS: '30' };
  await testWith(bench, samples.sachetYellow, 'scratch', stylus, scratchLimit, 'heldN', scratches(bench, 2.3, 6));
  await testWith(bench, samples.sachetTrial, 'scratch', stylus, scratchLimit, 'heldN', scratches(bench, 4.4, 6));
}

function squares(bench: DemoBench, share: number): string[] {
  return Array.from({ length: 3 }, () => String(Math.min(100, poisson(bench, 100 * share))));
}

/** Loads in steps of 0.5 N up to 5 N: the last without a scratch and the first with one, which may not come. */
function scratches(bench: DemoBench, meanN: number, count: number): string[] {
  return Array.from({ length: count }, () => {
    const first = meanN * (1 + 0.14 * bench.random.normal());
    const held = Math.max(0.5, Math.floor(first * 2) / 2);
    return held >= 5 ? '5' : `${bench.typed(held, 1)}\t${bench.typed(held + 0.5, 1)}`;
  });
}

/** The jaw takes more of the print the hotter it is. */
export async function testJaws(bench: DemoBench, samples: DemoSamples): Promise<void> {
  const lines = JAW_STEPS_C.flatMap((celsius) =>
    Array.from({ length: SEALS }, () => {
      const harm = (celsius - 178) / 8 + 0.4 * bench.random.normal();
      return `${celsius}\t${Math.min(5, Math.max(0, 5 - Math.max(0, Math.round(harm))))}`;
    }),
  );
  await testWith(bench, samples.dumplingR7, 'jaw-pick-off', { sealingC: String(SEAL_C), pressureNPerCm2: '30', dwellS: '0,6', jawFace: 'm' }, jawLimit, 'celsius', lines);
}

/** A new roll, looked at two hours and a day after lamination; it is to be looked at again after a week. */
export async function testLaminationAgain(bench: DemoBench, lots: DemoLots): Promise<void> {
  const { sampleId } = await bench.do('sample.add', {
    code: 'Q-26-009',
    product: 'dumpling pouch 600 g',
    job: 'J-4436',
    roll: 'roll 4, outer wraps',
    note: 'Bubbles seen over the print at the slitter',
    lotIds: [lots.dumplingR0, lots.petFresh, lots.inkR0, lots.adhesive, lots.pe],
  });
  const lines = [
    { hours: 2, share: 0.3, alongM: 3 },
    { hours: 24, share: 1, alongM: 6 },
  ].flatMap(({ hours, share, alongM }) =>
    LANES.map(({ acrossMm, coveragePct }, lane) => {
      const perM2 = share * BUBBLES_BARE * (BUBBLES_SOLID / BUBBLES_BARE) ** (coveragePct / 100);
      const tunnels = hours === 24 && lane === 5 ? 1 : 0;
      return [hours, acrossMm, bench.typed(alongM + 0.3 * lane, 1), coveragePct, poisson(bench, (perM2 * FRAME_CM2) / 10_000), tunnels, 0].join('\t');
    }),
  );
  await testWith(bench, sampleId, 'lamination-recheck', { laminatedOn: '2026-03-01', frameCm2: String(FRAME_CM2), webWidthMm: '1100', storage: 'Warm room', storageTemperatureC: '35' }, bubbleLimit, 'hours', lines);
}

/** A count that falls by chance (D. E. Knuth, Seminumerical Algorithms, 3.4.1). */
function poisson(bench: DemoBench, mean: number): number {
  const floor = Math.exp(-mean);
  let count = 0;
  for (let left = bench.random.uniform(); left > floor; left *= bench.random.uniform()) count += 1;
  return count;
}
