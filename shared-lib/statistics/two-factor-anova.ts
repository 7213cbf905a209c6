import { fUpperTail } from './distributions.ts';
import { factorise } from './householder.ts';
import { meanOf } from './summarise.ts';

export interface FactorReading {
  a: string;
  b: string;
  value: number;
}

export interface AnovaTerm {
  sumOfSquares: number;
  degreesOfFreedom: number;
  meanSquare: number;
  /** `null` where there is nothing left to compare with. */
  f: number | null;
  p: number | null;
}

export interface TwoFactorAnova {
  a: AnovaTerm;
  b: AnovaTerm;
  /** `null` where cells are missing or hold one reading each, so that the model is without interaction. */
  interaction: AnovaTerm | null;
  residual: { sumOfSquares: number; degreesOfFreedom: number; meanSquare: number | null };
  levelsA: string[];
  levelsB: string[];
  missing: { a: string; b: string }[];
  balanced: boolean;
}

/** Share of a column's length left after the others are taken out, below which it says nothing of its own. */
const DEPENDENT = 1e-10;

/**
 * Analysis of variance with two factors and their interaction. For unequal counts: type II compares each factor with the
 * model that holds the other, type III with the full model in contrasts that sum to zero; for equal counts they agree.
 * Where cells are missing, or no cell has a second reading, the interaction is left out.
 * @throws RangeError for fewer than two levels of a factor, or missing cells so many that the factors cannot be told apart.
 * Source: F. Yates, J. Am. Stat. Assoc. 29 (1934) 51; S. R. Searle, Linear Models for Unbalanced Data (1987), chapter 4.
 */
export function twoFactorAnova(readings: readonly FactorReading[], type: 'II' | 'III' = 'II'): TwoFactorAnova {
  const levelsA = [...new Set(readings.map(({ a }) => a))];
  const levelsB = [...new Set(readings.map(({ b }) => b))];
  if (levelsA.length < 2 || levelsB.length < 2) throw new RangeError('Each factor needs at least two levels.');
  const counts = levelsA.map((a) => levelsB.map((b) => readings.filter((reading) => reading.a === a && reading.b === b).length));
  const missing = levelsA.flatMap((a, i) => levelsB.flatMap((b, j) => (counts[i]![j] === 0 ? [{ a, b }] : [])));
  const values = readings.map(({ value }) => value);
  const centre = meanOf(values);
  const y = values.map((value) => value - centre);
  const one = [y.map(() => 1)];
  const columnsA = contrasts(readings.map(({ a }) => levelsA.indexOf(a)), levelsA.length);
  const columnsB = contrasts(readings.map(({ b }) => levelsB.indexOf(b)), levelsB.length);
  const withInteraction = missing.length === 0 && readings.length > levelsA.length * levelsB.length;
  const product = withInteraction ? columnsA.flatMap((first) => columnsB.map((second) => first.map((value, i) => value * second[i]!))) : [];
  const rest = type === 'III' ? product : [];

  const full = [...one, ...columnsA, ...columnsB, ...product];
  const residualSquares = squaresOf(full, y, full.length, y.length);
  const residualDf = y.length - full.length;
  const exact = residualSquares <= 1e-24 * y.reduce((sum, value) => sum + value * value, 0);
  const residual = { sumOfSquares: exact ? 0 : residualSquares, degreesOfFreedom: residualDf, meanSquare: residualDf > 0 ? (exact ? 0 : residualSquares / residualDf) : null };
  const term = (others: number[][], own: number[][]): AnovaTerm => {
    const sumOfSquares = squaresOf([...others, ...own], y, others.length, others.length + own.length);
    const meanSquare = sumOfSquares / own.length;
    const f = residual.meanSquare ? meanSquare / residual.meanSquare : null;
    return { sumOfSquares, degreesOfFreedom: own.length, meanSquare, f, p: f === null ? null : fUpperTail(f, own.length, residualDf) };
  };
  return {
    a: term([...one, ...columnsB, ...rest], columnsA),
    b: term([...one, ...columnsA, ...rest], columnsB),
    interaction: withInteraction ? term([...one, ...columnsA, ...columnsB], product) : null,
    residual,
    levelsA,
    levelsB,
    missing,
    balanced: counts.flat().every((count) => count === counts[0]![0]),
  };
}

/** Contrasts that sum to zero: one column per level but the last. */
function contrasts(places: number[], levels: number): number[][] {
  return Array.from({ length: levels - 1 }, (_, level) => places.map((place) => (place === level ? 1 : place === levels - 1 ? -1 : 0)));
}

/** Squares of y along the directions that columns `from` to `to` add to those before them. */
function squaresOf(columns: number[][], y: number[], from: number, to: number): number {
  if (columns.length > y.length) throw new RangeError('There are fewer readings than the two factors have levels to tell apart.');
  const { upper, rotated } = factorise(columns, y);
  if (upper.some((row, k) => Math.abs(row[k]!) < DEPENDENT * Math.hypot(...columns[k]!))) {
    throw new RangeError('So many combinations are missing that the two factors cannot be told apart; at least one chain of readings must link all levels.');
  }
  return rotated.slice(from, to).reduce((sum, value) => sum + value * value, 0);
}
