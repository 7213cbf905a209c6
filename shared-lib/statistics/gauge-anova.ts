import { fUpperTail } from './distributions.ts';
import type { MeanSquareTerm } from './mean-square-interval.ts';
import { meanOf, squaresAbout } from './summarise.ts';

/** Readings by appraiser, part and trial, every cell with as many trials. */
export type CrossedReadings = readonly (readonly (readonly number[])[])[];

interface Source {
  sumOfSquares: number;
  degreesOfFreedom: number;
  meanSquare: number;
}

export interface GaugeAnova {
  appraiser: Source;
  part: Source;
  interaction: Source & { f: number | null; p: number | null };
  repeat: Source;
  /** The interaction was no more than scatter and went into repeatability. */
  pooled: boolean;
  /** Variance components, none below zero. */
  variances: { repeatability: number; appraiser: number; interaction: number; part: number };
  /** The same as sums of mean squares, for intervals. */
  terms: { repeatability: MeanSquareTerm[]; reproducibility: MeanSquareTerm[]; gauge: MeanSquareTerm[]; part: MeanSquareTerm[]; total: MeanSquareTerm[] };
}

/** Above this p the interaction is pooled with repeatability, as is common practice. */
const POOLING = 0.25;

/**
 * Crossed measurement study by analysis of variance with random parts and appraisers.
 * @param pool `auto`: pool the interaction where its p is above 0.25.
 * @throws RangeError for fewer than two appraisers, parts or trials.
 * Source: D. C. Montgomery, Introduction to Statistical Quality Control, 6th ed. (2009), 8.7.
 */
export function gaugeAnova(readings: CrossedReadings, pool: 'auto' | 'never' = 'auto'): GaugeAnova {
  const [o, p, r] = [readings.length, readings[0]?.length ?? 0, readings[0]?.[0]?.length ?? 0];
  if (o < 2 || p < 2 || r < 2) throw new RangeError('A measurement study needs at least two appraisers who read at least two parts at least twice.');
  const origin = readings[0]![0]![0]!;
  const cells = readings.map((byPart) => byPart.map((trials) => meanOf(trials) - origin));
  const appraisers = cells.map(meanOf);
  const parts = Array.from({ length: p }, (_, j) => meanOf(cells.map((row) => row[j]!)));
  const grand = meanOf(appraisers);
  const source = (sumOfSquares: number, degreesOfFreedom: number): Source => ({ sumOfSquares, degreesOfFreedom, meanSquare: sumOfSquares / degreesOfFreedom });
  const appraiser = source(p * r * squaresAbout(appraisers, grand), o - 1);
  const part = source(o * r * squaresAbout(parts, grand), p - 1);
  const interactions = cells.flatMap((row, i) => row.map((mean, j) => mean - appraisers[i]! - parts[j]! + grand));
  const interaction = source(r * interactions.reduce((sum, value) => sum + value * value, 0), (o - 1) * (p - 1));
  const repeat = source(readings.flatMap((byPart) => byPart.map((trials) => squaresAbout(trials, meanOf(trials)))).reduce((sum, value) => sum + value, 0), o * p * (r - 1));
  const f = repeat.meanSquare > 0 ? interaction.meanSquare / repeat.meanSquare : null;
  const pInteraction = f === null ? null : fUpperTail(f, interaction.degreesOfFreedom, repeat.degreesOfFreedom);
  const pooled = pool === 'auto' && pInteraction !== null && pInteraction > POOLING;

  const error = pooled ? source(interaction.sumOfSquares + repeat.sumOfSquares, interaction.degreesOfFreedom + repeat.degreesOfFreedom) : repeat;
  const between = pooled ? error : interaction;
  const term = (coefficient: number, { meanSquare, degreesOfFreedom }: Source): MeanSquareTerm => ({ coefficient, meanSquare, degreesOfFreedom });
  const reproducibility = pooled
    ? [term(1 / (p * r), appraiser), term(-1 / (p * r), error)]
    : [term(1 / (p * r), appraiser), term((p - 1) / (p * r), interaction), term(-1 / r, repeat)];
  const gauge = pooled
    ? [term(1 / (p * r), appraiser), term(1 - 1 / (p * r), error)]
    : [term(1 / (p * r), appraiser), term((p - 1) / (p * r), interaction), term(1 - 1 / r, repeat)];
  const partTerms = [term(1 / (o * r), part), term(-1 / (o * r), between)];
  const total = pooled
    ? [term(1 / (p * r), appraiser), term(1 / (o * r), part), term(1 - 1 / (p * r) - 1 / (o * r), error)]
    : [term(1 / (p * r), appraiser), term(1 / (o * r), part), term((p - 1) / (p * r) - 1 / (o * r), interaction), term(1 - 1 / r, repeat)];
  return {
    appraiser,
    part,
    interaction: { ...interaction, f, p: pInteraction },
    repeat,
    pooled,
    variances: {
      repeatability: error.meanSquare,
      appraiser: Math.max(0, (appraiser.meanSquare - between.meanSquare) / (p * r)),
      interaction: pooled ? 0 : Math.max(0, (interaction.meanSquare - repeat.meanSquare) / r),
      part: Math.max(0, (part.meanSquare - between.meanSquare) / (o * r)),
    },
    terms: { repeatability: [term(1, error)], reproducibility, gauge, part: partTerms, total },
  };
}
