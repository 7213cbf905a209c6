import { z } from 'zod';
import { defineCalculation, type Outcome } from '../calculation/calculation.ts';
import { InputError } from '../calculation/input-error.ts';
import type { Flag, ResultValue } from '../calculation/result.ts';
import { scaleResult } from '../calculation/scale-result.ts';
import { valueWithoutInterval } from '../calculation/value-without-interval.ts';
import { formatNumber } from '../quantity/format.ts';
import { levelSchema } from '../statistics/level.ts';
import { meanOfReplicates } from '../statistics/mean-of-replicates.ts';
import { flowCupIds, flowCups, type FlowCup } from './flow-cups.ts';
import { flowTimesFigure } from './flow-times-figure.ts';

const time = z.number().gt(0).max(10_000);

const input = z.strictObject({
  cup: z.enum(flowCupIds),
  /** Flow time, or those of several runs. */
  seconds: z.union([time, z.array(time).min(1).max(1000)]).optional(),
  /** The other way round: which time this viscosity would take. */
  kinematicMm2S: z.number().gt(0).max(1e6).optional(),
  temperatureC: z.number().min(-50).max(200).optional(),
  /** Of the liquid, for its dynamic viscosity. */
  densityGCm3: z.number().gt(0).max(25).optional(),
  level: levelSchema,
});

type Given = z.output<typeof input>;

/** Flow time of a cup and kinematic viscosity, either from the other. */
export const viscosityCupCalculation = defineCalculation({
  id: 'viscosity-cup',
  version: '1',
  title: 'Viscosity by flow cup',
  input,
  compute,
  columns: [
    { key: 'run', title: 'Run', decimals: 0 },
    { key: 'seconds', title: 'Flow time', unit: 's', decimals: 1 },
    { key: 'kinematicMm2S', title: 'Viscosity', unit: 'mm²/s', decimals: 1 },
  ],
  cautions: ['Inks and solvents: heed their safety data sheets, ventilate, wear gloves, keep flames away.'],
  sources: [],
});

function compute(given: Given): Outcome {
  const { cup: id, seconds, kinematicMm2S, densityGCm3, level } = given;
  const cup = flowCups[id];
  if ((seconds === undefined) === (kinematicMm2S === undefined)) {
    throw new InputError('seconds', seconds ?? null, 'Give either the flow time or the kinematic viscosity.');
  }
  const times = seconds === undefined ? [cup.seconds(kinematicMm2S!)] : [seconds].flat();
  times.forEach((one, index) => {
    if (cup.viscosity(one) <= 0) {
      throw new InputError(Array.isArray(seconds) ? `seconds[${index}]` : 'seconds', one, `${formatNumber(one, 1)} s is too short for ${cup.label}: by its formula nothing flows as fast. Take a cup with a narrower hole.`);
    }
  });
  const mean = meanOfReplicates(times, 's', level, 0);
  // The formula rises with the time throughout, so that the ends of the interval carry over.
  const viscosity = (at: number | null) => (at === null ? null : Math.max(0, cup.viscosity(at)));
  const kinematic: ResultValue = { ...mean, unit: 'mm²/s', value: viscosity(mean.value), low: mean.low === null || mean.low === 0 ? mean.low : viscosity(mean.low), high: viscosity(mean.high) };
  return {
    results: {
      kinematicMm2S: kinematic,
      seconds: mean,
      dynamicMPaS: densityGCm3 === undefined ? valueWithoutInterval(null, 'mPa·s', 0) : scaleResult(kinematic, densityGCm3, 'mPa·s'),
    },
    table: times.map((one, index) => ({ run: index + 1, seconds: one, kinematicMm2S: cup.viscosity(one) })),
    flags: flagsOf(cup, times, mean, given),
    notes: [
      `${cup.label}, ${cup.standard}; flow times from ${cup.from} to ${cup.to} s, at ${cup.celsius} °C.`,
      ...(times.length === 1 ? ['One run gives no interval.'] : []),
      ...(densityGCm3 === undefined ? [] : ['Dynamic viscosity = kinematic viscosity × density.']),
    ],
    figures: [flowTimesFigure(cup, times, kinematic)],
    sources: [cup.source],
  };
}

/** Runs that lie farther apart than this share of their mean: common practice to repeat. */
const SPREAD = 0.05;
const NEAR_STANDARD_C = 0.5;

function flagsOf(cup: FlowCup, times: number[], mean: ResultValue, { temperatureC }: Given): Flag[] {
  const flags: Flag[] = [];
  const value = mean.value!;
  if (value < cup.from || value > cup.to) {
    flags.push({ code: 'outside-cup-range', where: 'seconds', text: `${formatNumber(value, 1)} s lies outside the ${cup.from} to ${cup.to} s for which the formula of ${cup.label} holds; take a cup with a ${value < cup.from ? 'narrower' : 'wider'} hole.` });
  }
  if (temperatureC === undefined) {
    flags.push({ code: 'no-temperature', where: 'temperatureC', text: `The temperature is not stated; viscosity changes by some percent with each degree (standard: ${cup.celsius} °C).` });
  } else if (Math.abs(temperatureC - cup.celsius) > NEAR_STANDARD_C) {
    flags.push({ code: 'other-temperature', where: 'temperatureC', text: `Read at ${temperatureC} °C, not at the ${cup.celsius} °C of the standard; viscosity changes by some percent with each degree.` });
  }
  if (Math.max(...times) - Math.min(...times) > SPREAD * value) {
    flags.push({ code: 'runs-apart', where: 'seconds', text: `The runs lie more than ${100 * SPREAD} % apart: the ink warms, thickens, or the cup is not clean.` });
  }
  return flags;
}
