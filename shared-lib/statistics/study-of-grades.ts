import type { Outcome } from '../calculation/calculation.ts';
import type { Flag, ResultValue } from '../calculation/result.ts';
import { valueWithoutInterval } from '../calculation/value-without-interval.ts';
import { formatNumber } from '../quantity/format.ts';
import { gradeAgreement } from './grade-agreement.ts';
import type { OverallKappa } from './grade-agreement.ts';
import { intraclassCorrelation } from './intraclass-correlation.ts';
import type { StudyCells } from './study-cells.ts';

type Grade = number | string;

const NEARLY_ALL = 0.8;

/**
 * A measurement study of grades: who agrees with whom, beyond chance. Weights go by the places on the scale.
 * @param given grades in order, each reading one of them; without it, the grades that occur.
 */
export function studyOfGrades({ parts, appraisers, cells }: StudyCells<Grade>, given: Grade[] | undefined, level: number): Outcome {
  const scale = given ?? scaleOf(cells.flat(2));
  const grades = parts.map((_, p) => appraisers.map((__, a) => cells[a]![p]!.map((grade) => scale.indexOf(grade))));
  const found = gradeAgreement(grades, appraisers, scale.length, level);
  const n = parts.length;
  const ofKappa = (kappa: OverallKappa | null): ResultValue =>
    kappa === null || kappa.low === null ? valueWithoutInterval(kappa?.value ?? null, '', n) : { ...kappa, unit: '', level, n, bound: 'exact' };
  const numeric = scale.every((grade) => typeof grade === 'number');
  const icc = numeric ? intraclassCorrelation(cells[0]!.map((_, p) => appraisers.map((__, a) => mean(cells[a]![p]! as number[]))), level) : null;
  const { agreed, low, high } = found.agreement;
  const notes = [
    `All readings of a part agree on ${agreed} of ${n} parts.`,
    found.kappa === null ? 'One grade was given throughout, so agreement beyond chance cannot be judged; study parts that differ.' : `Beyond chance: kappa ${formatNumber(found.kappa.value, 2)}, with a near miss counted in part ${formatNumber(found.weighted!.value, 2)} (1 is full agreement, 0 no better than chance).`,
    'Weights fall with the square of the distance in steps of the scale.',
  ];
  if (appraisers.length > 2) notes.push('Kappa is the mean over all pairs of appraisers, its interval by leaving out one part at a time.');
  if (found.kappa !== null && found.kappa.low === null) notes.push('So few parts, or parts so alike, leave no interval for kappa.');
  if (cells[0]![0]!.length > 1) notes.push(...ownAgreement(grades, appraisers));
  return {
    results: {
      kappa: ofKappa(found.kappa),
      weightedKappa: ofKappa(found.weighted),
      agreementPct: { value: (100 * agreed) / n, unit: '%', low: 100 * low, high: 100 * high, level, n, bound: 'exact' },
      ...(appraisers.length > 2 && { fleissKappa: valueWithoutInterval(found.fleiss, '', n) }),
      ...(numeric && { icc: icc === null || icc.low === null ? valueWithoutInterval(icc?.value ?? null, '', n) : { ...icc, unit: '', level, n, bound: 'exact' as const } }),
    },
    table: found.pairs.map(({ a, b, compared, agreed: same, kappa, weighted }) => ({ a, b, compared, agreementPct: (100 * same) / compared, kappa: kappa?.value ?? null, weightedKappa: weighted?.value ?? null })),
    flags: oddOneOut(grades, appraisers),
    notes,
  };
}

function scaleOf(grades: Grade[]): Grade[] {
  const distinct = [...new Set(grades)];
  const scale = distinct.every((grade) => typeof grade === 'number') ? distinct.sort((a, b) => Number(a) - Number(b)) : distinct;
  return scale.length > 1 ? scale : [...scale, ''];
}

/** How often each appraiser gave a part the same grade every time. */
function ownAgreement(grades: number[][][], appraisers: readonly string[]): string[] {
  return appraisers.map((name, a) => {
    const same = grades.filter((part) => part[a]!.every((grade) => grade === part[a]![0])).length;
    return `${name} gave ${same} of ${grades.length} parts the same grade every time.`;
  });
}

/** An appraiser who grades higher, or lower, than each of the others on nearly all parts. */
function oddOneOut(grades: number[][][], appraisers: readonly string[]): Flag[] {
  if (grades.length < 5) return [];
  const above = (a: number, b: number) => grades.filter((part) => mean(part[a]!) > mean(part[b]!)).length;
  // Of two who differ, the higher one is named.
  const sides = appraisers.length > 2 ? (['higher', 'lower'] as const) : (['higher'] as const);
  return appraisers.flatMap((name, a) => sides.flatMap((side): Flag[] => {
    const counts = appraisers.flatMap((_, other) => (other === a ? [] : [side === 'higher' ? above(a, other) : above(other, a)]));
    const least = Math.min(...counts);
    if (least < NEARLY_ALL * grades.length) return [];
    return [{ code: 'reads-differently', where: name, text: `${name} grades ${side} than everyone else on ${least} of ${grades.length} parts or more.` }];
  }));
}

function mean(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}
