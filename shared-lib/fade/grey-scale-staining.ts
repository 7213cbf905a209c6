import { deltaEab } from '../colour/delta-e-ab.ts';
import type { Lab } from '../colour/lab.ts';
import type { HalfGrade } from './grey-scale-change.ts';

/** ΔE_GS of ISO 105-A04 between a white before and after it was stained: ΔE − 0.4·√(ΔE² − ΔL²). */
export function deltaEGreyScale(before: Lab, after: Lab): number {
  const difference = deltaEab(before, after);
  const lightness = after[0] - before[0];
  return difference - 0.4 * Math.sqrt(Math.max(0, difference ** 2 - lightness ** 2));
}

/** The staining rating of ISO 105-A04 before it is rounded; below 1 for stains deeper than the scale. */
export function stainingRating(difference: number): number {
  const deep = 6.1 - 1.45 * Math.log(difference);
  return difference > 0 && deep <= 4 ? deep : 5 - 0.23 * difference;
}

/** The half grade nearest to the rating, from 1 to 5 (ISO 105-A03, A04). */
export function stainingGrade(difference: number): HalfGrade {
  const grade = Math.min(5, Math.max(1, Math.round(2 * stainingRating(difference)) / 2));
  return { grade, text: Number.isInteger(grade) ? String(grade) : `${grade - 0.5}-${grade + 0.5}` };
}
