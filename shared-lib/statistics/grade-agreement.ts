import { clopperPearson } from './clopper-pearson.ts';
import { studentTQuantile } from './distributions.ts';
import { cohenKappa, fleissKappa } from './kappa.ts';
import type { Kappa } from './kappa.ts';
import { allPairs } from './pair-comparison.ts';

export interface PairAgreement {
  a: string;
  b: string;
  compared: number;
  agreed: number;
  kappa: Kappa | null;
  weighted: Kappa | null;
}

/** Kappa over all appraisers; without an interval where too few parts show any variation. */
export interface OverallKappa {
  value: number;
  low: number | null;
  high: number | null;
}

export interface GradeAgreement {
  pairs: PairAgreement[];
  /** Means over the pairs; the interval is that of the one pair, or by leaving out a part at a time. `null` without variation. */
  kappa: OverallKappa | null;
  weighted: OverallKappa | null;
  /** Fleiss' kappa of three and more appraisers. */
  fleiss: number | null;
  /** Parts on which all readings are one grade, of all parts. */
  agreement: { agreed: number; parts: number; low: number; high: number };
}

/** Grades by part, appraiser and trial: `grades[part][appraiser][trial]`, as places on the scale. */
export type GradeReadings = readonly (readonly (readonly number[])[])[];

/**
 * Agreement of appraisers who grade the same parts: kappa between each two, plain and with quadratic weights, and the
 * share of parts on which all agree with an exact interval.
 * @param levels number of grades on the scale.
 * Source: R. J. Light, Psychol. Bull. 76 (1971) 365 (mean of pairs); see `kappa.ts`.
 */
export function gradeAgreement(grades: GradeReadings, appraisers: readonly string[], levels: number, level: number): GradeAgreement {
  const places = allPairs(appraisers.length);
  const pairs = places.map(([a, b]): PairAgreement => {
    const table = tableOf(grades, a, b, levels);
    const compared = table.flat().reduce((sum, count) => sum + count, 0);
    return { a: appraisers[a]!, b: appraisers[b]!, compared, agreed: table.reduce((sum, row, i) => sum + row[i]!, 0), kappa: cohenKappa(table, 'none', level), weighted: cohenKappa(table, 'quadratic', level) };
  });
  const agreed = grades.filter((part) => part.flat().every((grade) => grade === part[0]![0])).length;
  const counts = grades.map((part) => Array.from({ length: levels }, (_, grade) => part.flat().filter((value) => value === grade).length));
  const mean = (weights: 'none' | 'quadratic'): OverallKappa | null => {
    const only = pairs.length === 1 ? pairs[0]![weights === 'none' ? 'kappa' : 'weighted'] : null;
    if (only) return { value: only.value, low: only.low, high: only.high };
    return pairs.length === 1 ? null : meanKappa(grades, places, levels, weights, level);
  };
  return {
    pairs,
    kappa: mean('none'),
    weighted: mean('quadratic'),
    fleiss: appraisers.length > 2 ? fleissKappa(counts) : null,
    agreement: { agreed, parts: grades.length, ...clopperPearson(agreed, grades.length, level) },
  };
}

function tableOf(grades: GradeReadings, a: number, b: number, levels: number): number[][] {
  const table = Array.from({ length: levels }, () => new Array<number>(levels).fill(0));
  for (const part of grades) part[a]!.forEach((grade, trial) => table[grade]![part[b]![trial]!]!++);
  return table;
}

function meanKappa(grades: GradeReadings, places: readonly [number, number][], levels: number, weights: 'none' | 'quadratic', level: number): OverallKappa | null {
  const of = (parts: GradeReadings): number | null => {
    const each = places.map(([a, b]) => cohenKappa(tableOf(parts, a, b, levels), weights)?.value ?? null);
    return each.includes(null) ? null : each.reduce<number>((sum, value) => sum + value!, 0) / each.length;
  };
  const value = of(grades);
  if (value === null) return null;
  const left = grades.length > 2 ? grades.map((_, leave) => of(grades.filter((__, part) => part !== leave))) : [];
  if (left.length === 0 || left.includes(null)) return { value, low: null, high: null };
  const n = grades.length;
  const centre = left.reduce<number>((sum, each) => sum + each!, 0) / n;
  const standardError = Math.sqrt(((n - 1) / n) * left.reduce<number>((sum, each) => sum + (each! - centre) ** 2, 0));
  const reach = studentTQuantile((1 + level) / 2, n - 1) * standardError;
  return { value, low: Math.max(-1, value - reach), high: Math.min(1, value + reach) };
}
