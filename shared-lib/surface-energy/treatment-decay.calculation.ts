import { z } from 'zod';
import { defineCalculation, type Outcome } from '../calculation/calculation.ts';
import type { Flag, ResultValue } from '../calculation/result.ts';
import { formatNumber } from '../quantity/format.ts';
import { aiccOfLikelihood } from '../statistics/akaike.ts';
import { decayFlags } from './decay-flags.ts';
import { decayAt, fitDecay, type DecayReading } from './decay-fit.ts';
import { exponentialToFloor, logTime, type DecayModel } from './decay-models.ts';
import {
  daysInterval,
  daysUntil,
  decayCutoff,
  farthestDays,
  rateInterval,
  sizeInterval,
  tensionInterval,
  type Decay,
  type Ends,
} from './decay-profile.ts';
import { decayReading, decayReadingSchema, refuseTooFew } from './decay-reading.ts';
import { tensionMNm } from './film-position.ts';
import { treatmentDecayFigure } from './treatment-decay-figure.ts';

const level = 0.95;
/** Lowest tension of a polymer film worth the name of a floor, mN/m; fluoropolymers end there. */
const lowestFloorMNm = 15;

const input = z.strictObject({
  readings: z.array(decayReadingSchema).min(3).max(1000),
  requiredMNm: tensionMNm,
});

/**
 * How the treatment of a film decays with time and how long it stays above what printing needs. Readings by test fluids enter
 * as brackets. Two models are fitted by maximum likelihood; AICc chooses, both are shown.
 */
export const treatmentDecayCalculation = defineCalculation({
  id: 'treatment-decay',
  version: '2',
  title: 'Decay of the treatment',
  input,
  compute: (given): Outcome => {
    const { requiredMNm } = given;
    const readings = given.readings.map((reading, index) => decayReading(reading, `readings[${index}]`));
    refuseTooFew(readings);
    const fitted = [exponentialToFloor, logTime].filter((model) => canFit(model, readings)).map((model) => fit(model, readings));
    const chosen = choose(fitted);
    const other = fitted.find((candidate) => candidate !== chosen);
    const until = untilRequired(chosen, requiredMNm, readings.length);
    const parameters = parameterResults(chosen, readings.length);
    return {
      results: {
        ...parameters.results,
        daysUntilRequired: until.value,
        testAgainBy: testAgainBy(until.value),
      },
      table: fitted.map((candidate) => modelRow(candidate, candidate === chosen, requiredMNm)),
      flags: [
        ...parameters.flags,
        ...decayFlags(chosen.decay, other?.decay, requiredMNm),
      ],
      notes: [
        `${capital(chosen.decay.model.title)}: ${chosen.decay.model.formula}, t in days.`,
        choiceNote(chosen, other),
        ...until.notes,
        ...parameters.notes,
      ],
      figures: [treatmentDecayFigure(chosen.decay, other?.decay, requiredMNm, until.value, level)],
    };
  },
  columns: [
    { key: 'model', title: 'Model' },
    { key: 'chosen', title: 'Chosen' },
    { key: 'aicc', title: 'AICc', decimals: 2 },
    { key: 'initial', title: 'Initial', unit: 'mN/m', decimals: 1 },
    { key: 'floor', title: 'Floor', unit: 'mN/m', decimals: 1 },
    { key: 'rate', title: 'Rate' },
    { key: 'scatter', title: 'Scatter', unit: 'mN/m', decimals: 2 },
    { key: 'daysUntilRequired', title: 'Days until required', unit: 'd', decimals: 0 },
  ],
  cautions: [],
  sources: [
    'Both shapes of decay are common practice in the trade; neither is a law',
    'Maximum likelihood with bracketed readings: Olsen, Econometrica 46 (1978) 1211; profile-likelihood intervals: Meeker & Escobar, Statistical Methods for Reliability Data (1998)',
    'Choice of model: AICc, Hurvich & Tsai, Biometrika 76 (1989) 297',
  ],
});

interface Fitted {
  decay: Decay;
  aicc: number | null;
}

function canFit(model: DecayModel, readings: readonly DecayReading[]): boolean {
  const days = new Set(readings.map((reading) => reading.days)).size;
  return days >= model.parameters && readings.length > model.parameters;
}

function fit(model: DecayModel, readings: readonly DecayReading[]): Fitted {
  const best = fitDecay(model, readings);
  return {
    decay: { model, readings, fit: best, cutoff: decayCutoff(readings.length, model.parameters, level) },
    aicc: aiccOfLikelihood(best.logLikelihood, readings.length, model.parameters + 1),
  };
}

/** The lower AICc; where it cannot be given for one, the model with fewer parameters. */
function choose(fitted: Fitted[]): Fitted {
  const [first, second] = fitted;
  if (!second) return first!;
  return first!.aicc !== null && second.aicc !== null && first!.aicc < second.aicc ? first! : second;
}

function choiceNote(chosen: Fitted, other: Fitted | undefined): string {
  if (!other) return 'Only the log-time model was fitted: the exponential one needs readings on more days.';
  if (chosen.aicc === null || other.aicc === null) {
    return 'Too few readings to compare the models by AICc; the one with fewer parameters was taken.';
  }
  const lead = other.aicc - chosen.aicc;
  const weight = lead < 2 ? 'hardly better than' : lead < 7 ? 'better than' : 'clearly better than';
  return `By AICc it is ${weight} the ${other.decay.model.title} model (difference ${formatNumber(lead, 1)}).`;
}

function parameterResults({ decay }: Fitted, n: number): { results: Record<string, ResultValue>; flags: Flag[]; notes: string[] } {
  const { model, fit: best } = decay;
  const result = (value: number | null, unit: string, ends: Ends): ResultValue => ({
    value,
    unit,
    ...ends,
    level: ends.low === null && ends.high === null ? null : level,
    n,
    bound: 'exact',
  });
  const none: Ends = { low: null, high: null };
  const initial = result(decayAt(model, best, 0), 'mN/m', tensionInterval(decay, 0));
  const scatter = result(best.standardDeviation, 'mN/m', none);
  const scatterNote = 'No interval is given for the scatter; it is held at or above 0.25 mN/m, half of the 0.5 mN/m to which tensions are reported.';
  if (model.id === 'log-time') {
    const ends = sizeInterval(decay);
    const rate = result(-best.size, 'mN/m per tenfold time', { low: negated(ends.high), high: negated(ends.low) });
    return { results: { initial, floor: result(null, 'mN/m', none), rate, scatter }, flags: [], notes: ['The log-time model has no floor.', scatterNote] };
  }
  const floorSeen = best.base >= lowestFloorMNm;
  return {
    results: {
      initial,
      floor: floorSeen ? result(best.base, 'mN/m', tensionInterval(decay, Infinity)) : result(null, 'mN/m', none),
      rate: result(best.rate, '1/d', rateInterval(decay)),
      scatter,
    },
    flags: floorSeen ? [] : [{ code: 'floor-not-seen', where: 'floor', text: 'The readings do not show where the decay levels off, so no floor is given.' }],
    notes: [scatterNote],
  };
}

function untilRequired({ decay }: Fitted, requiredMNm: number, n: number): { value: ResultValue; notes: string[] } {
  const days = daysUntil(decay, requiredMNm);
  const { low, high } = daysInterval(decay, requiredMNm);
  const common = { unit: 'd', level, n };
  if (days === 'from the start') {
    return {
      value: { ...common, value: high ?? 0, low: null, high: high ?? 0, bound: 'at-most' },
      notes: [`The fitted curve starts below ${requiredMNm} mN/m; with the interval it was above it for at most the days given.`],
    };
  }
  if (days === 'never') {
    const from = low ?? farthestDays;
    return {
      value: { ...common, value: from, low: from, high: null, bound: 'at-least' },
      notes: [`The fitted curve stays above ${requiredMNm} mN/m for ten years, as far as was searched; the days given are the lower end of the interval.`],
    };
  }
  return {
    value: { ...common, value: days, low: Math.min(low ?? days, days), high: high === null ? null : Math.max(high, days), bound: 'exact' },
    notes: high === null ? [`The interval is open above: within it the film may stay above ${requiredMNm} mN/m for ten years or longer.`] : [],
  };
}

/**
 * The film may fall below the requirement from the lower end of the interval on, so it is to be tested by then: in whole
 * days, the last on which it is still good.
 */
function testAgainBy(until: ResultValue): ResultValue {
  const days = Math.floor(until.low ?? 0);
  return { value: days, unit: 'd', low: null, high: null, level: null, n: until.n, bound: 'exact' };
}

function modelRow({ decay, aicc }: Fitted, isChosen: boolean, requiredMNm: number) {
  const { model, fit: best } = decay;
  const days = daysUntil(decay, requiredMNm);
  const exponential = model.id === 'exponential';
  return {
    model: model.title,
    chosen: isChosen ? 'yes' : 'no',
    aicc,
    initial: decayAt(model, best, 0),
    floor: exponential ? best.base : null,
    rate: exponential ? `${formatNumber(best.rate, 4)} 1/d` : `${formatNumber(-best.size, 2)} mN/m per tenfold time`,
    scatter: best.standardDeviation,
    daysUntilRequired: typeof days === 'number' ? days : days === 'never' ? null : 0,
  };
}

function negated(value: number | null): number | null {
  return value === null ? null : -value;
}

function capital(text: string): string {
  return text[0]!.toUpperCase() + text.slice(1);
}
