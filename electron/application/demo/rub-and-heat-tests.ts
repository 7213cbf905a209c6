import { seededRandom, type Random } from '../../../shared-lib/statistics/random.ts';
import type { DemoBench } from './demo-bench.ts';
import type { DemoSamples } from './demo-samples.ts';

/** Of the control and the trial ink: wax keeps the trial from rubbing off and blocking; its resin softens earlier. */
interface Ink {
  sample: 'dumplingR0' | 'dumplingR7';
  /** Share of the density lost per stroke at first, and the share that would rub off in the end. */
  rubRate: number;
  rubPlateau: number;
  softensC: number;
  staticFriction: number;
  blockingGrades: string;
}

const inks: Ink[] = [
  { sample: 'dumplingR0', rubRate: 0.004, rubPlateau: 0.3, softensC: 168, staticFriction: 0.36, blockingGrades: '22123' },
  { sample: 'dumplingR7', rubRate: 0.0015, rubPlateau: 0.24, softensC: 151, staticFriction: 0.27, blockingGrades: '11021' },
];

const STROKES = [0, 20, 50, 100, 200];
const HEAT_STEPS = [130, 140, 150, 160, 170, 180];
const PER_STEP = 6;
/** Logistic spread of the temperature at which single specimens fail, °C. */
const HEAT_SPREAD_C = 6;
const DOSES_MJ_PER_CM2 = [20, 40, 80, 160];

const rubLimit = { property: 'strokesToLimit', lower: 60, upper: null, source: 'In-house specification for cartons of pouches' };
const heatLimit = { property: 't05', lower: 125, upper: null, source: 'Jaws of the packing line, 125 °C' };

/** Rub, heat, blocking and friction of both inks, on one day in March. */
export async function testRubAndHeat(bench: DemoBench, samples: DemoSamples): Promise<void> {
  // A stream of its own: more tests must not move the readings of the rest of the demo.
  const noise = seededRandom(58);
  for (const ink of inks) {
    const sampleId = samples[ink.sample];
    const rub = await bench.start(sampleId, 'rub', { way: 'dry', receptor: 'white paper', loadG: '900', lostLimitPct: '10', hoursSincePrinting: '1100' });
    await bench.limit(rub, rubLimit);
    await bench.pasteAndFinish(rub, 'specimen', rubbed(bench, noise, ink));
    const heat = await bench.start(sampleId, 'heat-resistance', { failure: 'ink on the foil', facing: 'foil', pressureKPa: '200', dwellS: '1' });
    await bench.limit(heat, heatLimit);
    await bench.pasteAndFinish(heat, 'celsius', heated(noise, ink));
    const blocking = await bench.start(sampleId, 'blocking', { pressedBy: 'clamp', faces: 'print-back', pressureKPa: '350', temperatureC: '45', hours: '24' });
    await bench.pasteAndFinish(blocking, 'grade', [...ink.blockingGrades]);
    const friction = await bench.start(sampleId, 'friction', { pairing: 'print-print', speedMmPerMin: '150', direction: 'machine', temperatureC: '23', relativeHumidityPct: '50' });
    await bench.pasteAndFinish(friction, 'staticN', slid(bench, noise, ink));
  }
}

/** Cure of a UV overprint white under trial, on the sheet of the trial ink: four looks of which none shows conversion. */
export async function testCure(bench: DemoBench, samples: DemoSamples): Promise<void> {
  const noise = seededRandom(59);
  const sampleId = samples.sachetTrial;
  const rubs = await bench.start(sampleId, 'cure-rubs', { solvent: 'ethanol', requiredDoubleRubs: '50', cloth: 'cotton, new for each', loadG: '1000' });
  const counts = ['38\ty', '61\ty', '100\tn', '74\ty', '100\tn'];
  await bench.pasteAndFinish(rubs, 'doubleRubs', counts);
  const lift = await bench.start(sampleId, 'tape-label-lift', { pulled: 'tape', tape: '25 mm, lot 7', dwellMin: '1', angleDeg: '90', hoursSinceCure: '0,2' });
  await bench.pasteAndFinish(lift, 'liftedPct', ['0\ty', '0\ty', '2\ty', '0\tn', '0\ty']);
  const depth = await bench.start(sampleId, 'cure-depth', { filmUm: '6', drawdownUm: '50', workingDoseMJPerCm2: '80', lamp: 'LED 395 nm', solvent: 'ethanol' });
  const depths = DOSES_MJ_PER_CM2.flatMap((dose) => [1, 2, 3].map(() => `${dose}\t${bench.typed(4.2 * Math.log(dose / 11) + 0.25 * noise.normal(), 1)}`));
  await bench.pasteAndFinish(depth, 'doseMJPerCm2', depths);
  const tack = await bench.start(sampleId, 'surface-tack', { gradedAtMin: '1', temperatureC: '23', relativeHumidityPct: '50' });
  await bench.pasteAndFinish(tack, 'grade', ['1\t2\t5', '2\t5\t10', '1\t2\t5']);
}

function rubbed(bench: DemoBench, noise: Random, { rubRate, rubPlateau }: Ink): string[] {
  return [1, 2, 3, 4].flatMap((specimen) => {
    const start = 1.34 + 0.02 * noise.normal();
    const rate = (rubRate / rubPlateau) * Math.exp(0.2 * noise.normal());
    return STROKES.map((strokes) => {
      const lost = start * rubPlateau * -Math.expm1(-rate * strokes);
      const density = start - lost + 0.004 * noise.normal();
      return [`${specimen}`, `${strokes}`, bench.typed(density, 2), strokes === 0 ? '' : bench.typed(0.4 * lost, 2)].join('\t');
    });
  });
}

function heated(noise: Random, { softensC }: Ink): string[] {
  return HEAT_STEPS.map((celsius) => {
    const share = 1 / (1 + Math.exp(-(celsius - softensC) / HEAT_SPREAD_C));
    const failed = Array.from({ length: PER_STEP }, () => noise.uniform() < share).filter(Boolean).length;
    return `${celsius}\t${PER_STEP}\t${failed}`;
  });
}

function slid(bench: DemoBench, noise: Random, { staticFriction }: Ink): string[] {
  const normalN = 0.2 * 9.80665;
  return Array.from({ length: 5 }, () => {
    const forceN = staticFriction * normalN * (1 + 0.05 * noise.normal());
    return `${bench.typed(forceN, 2)}\t${bench.typed(0.78 * forceN, 2)}`;
  });
}
