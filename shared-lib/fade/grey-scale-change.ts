import { chroma, hueDeg, type Lab } from '../colour/lab.ts';
import { labDifference } from '../colour/lab-difference.ts';

export interface HalfGrade {
  /** 5, 4.5 … 1. */
  grade: number;
  /** As the standard writes it: '5', '4-5' … '1'. */
  text: string;
}

/** The step table: each grade with the first ΔEF that no longer earns it. */
const steps: (HalfGrade & { below: number })[] = [
  { below: 0.4, grade: 5, text: '5' },
  { below: 1.25, grade: 4.5, text: '4-5' },
  { below: 2.1, grade: 4, text: '4' },
  { below: 2.95, grade: 3.5, text: '3-4' },
  { below: 4.1, grade: 3, text: '3' },
  { below: 5.8, grade: 2.5, text: '2-3' },
  { below: 8.2, grade: 2, text: '2' },
  { below: 11.6, grade: 1.5, text: '1-2' },
  { below: Infinity, grade: 1, text: '1' },
];

/** ΔEF of ISO 105-A05 between a colour before and after exposure (CIELAB, D65/10°). */
export function deltaEF(before: Lab, after: Lab): number {
  const { deltaL, deltaC, deltaH } = labDifference(before, after);
  const meanChroma = (chroma(before[1], before[2]) + chroma(after[1], after[2])) / 2;
  const fromBlue = Math.abs(meanHue(hueDeg(before[1], before[2]), hueDeg(after[1], after[2])) - 280);
  const x = ((fromBlue <= 180 ? fromBlue : 360 - fromBlue) / 30) ** 2;
  const shift = (deltaC * meanChroma * Math.exp(-x)) / 100;
  const chromaPart = (deltaC - shift) / (1 + (meanChroma / 50) ** 2);
  const huePart = (deltaH - shift) / (1 + (meanChroma / 100) ** 2);
  return Math.hypot(deltaL, chromaPart, huePart);
}

/** The half grade that a ΔEF earns, by the step table of ISO 105-A05. */
export function greyScaleGrade(difference: number): HalfGrade {
  const { grade, text } = steps.find(({ below }) => difference < below) ?? steps.at(-1)!;
  return { grade, text };
}

/** GSc, the grade of ISO 105-A05 before it is rounded to a half step; falls below 1 for very strong changes. */
export function greyScaleContinuous(difference: number): number {
  return difference <= 3.4 ? 5 - difference / 1.7 : 5 - Math.log2(difference / 0.85);
}

function meanHue(h1: number, h2: number): number {
  const mean = (h1 + h2) / 2;
  if (Math.abs(h1 - h2) <= 180) return mean;
  return h1 + h2 < 360 ? mean + 180 : mean - 180;
}
