import type { ProbeLiquid } from './probe-liquids.ts';

/** A solution of Wu's equations, mN/m. */
export interface WuSolution {
  dispersive: number;
  polar: number;
}

/**
 * All physical solutions (dispersive > 0, polar ≥ 0) of Wu's harmonic-mean equations for two liquids:
 * γL(1 + cos θ)/4 = γSd γLd/(γSd + γLd) + γSp γLp/(γSp + γLp).
 *
 * Cleared of fractions each equation reads a·xy + b·x + c·y + e = 0 with x = γSd and y = γSp. The first gives y by x; put into
 * the second that is a quadratic in x. Clearing fractions may add roots, so each is tried in the equations as they stand.
 * Source: Wu, Polymer Interface and Adhesion, 1982.
 *
 * @returns none, one or two solutions
 */
export function wuPair(first: ProbeLiquid, second: ProbeLiquid, firstCosine: number, secondCosine: number): WuSolution[] {
  const one = cleared(first, firstCosine);
  const two = cleared(second, secondCosine);
  const quadratic = two.b * one.a - two.a * one.b;
  const linear = two.b * one.c + two.e * one.a - two.a * one.e - two.c * one.b;
  const constant = two.e * one.c - two.c * one.e;
  const found: WuSolution[] = [];
  for (const x of realRoots(quadratic, linear, constant)) {
    if (!(x > 0)) continue;
    // Of the two expressions for y the one with the larger denominator is the safer.
    const fromOne = one.a * x + one.c;
    const fromTwo = two.a * x + two.c;
    const y = Math.abs(fromOne) >= Math.abs(fromTwo) ? -(one.b * x + one.e) / fromOne : -(two.b * x + two.e) / fromTwo;
    const polar = Math.abs(y) < 1e-9 ? 0 : y;
    if (polar >= 0 && satisfies(one, x, polar) && satisfies(two, x, polar)) found.push({ dispersive: x, polar });
  }
  return found;
}

/** Work of adhesion over 4, mN/m, that Wu's harmonic mean gives for a solid and a liquid. */
export function wuQuarterWork(solidDispersive: number, solidPolar: number, dispersive: number, polar: number): number {
  return harmonicTerm(solidDispersive, dispersive) + harmonicTerm(solidPolar, polar);
}

function harmonicTerm(solid: number, liquid: number): number {
  return solid + liquid === 0 ? 0 : (solid * liquid) / (solid + liquid);
}

interface Cleared {
  a: number;
  b: number;
  c: number;
  e: number;
  quarterWork: number;
  dispersive: number;
  polar: number;
}

function cleared(liquid: ProbeLiquid, cosine: number): Cleared {
  const dispersive = liquid.dispersiveMNm!;
  const polar = liquid.polarMNm!;
  const quarterWork = (liquid.totalMNm * (1 + cosine)) / 4;
  return {
    a: quarterWork - dispersive - polar,
    b: polar * (quarterWork - dispersive),
    c: dispersive * (quarterWork - polar),
    e: quarterWork * dispersive * polar,
    quarterWork,
    dispersive,
    polar,
  };
}

function satisfies(liquid: Cleared, dispersive: number, polar: number): boolean {
  const work = wuQuarterWork(dispersive, polar, liquid.dispersive, liquid.polar);
  return Math.abs(work - liquid.quarterWork) <= 1e-6 * Math.max(1, liquid.quarterWork);
}

/** Real roots of ax² + bx + c = 0, by the form that does not cancel. */
function realRoots(a: number, b: number, c: number): number[] {
  if (Math.abs(a) <= 1e-14 * (Math.abs(b) + Math.abs(c))) return b === 0 ? [] : [-c / b];
  const discriminant = b * b - 4 * a * c;
  // A double root comes out a hair below zero by rounding.
  if (discriminant < -1e-12 * b * b) return [];
  const q = -(b + (b < 0 ? -1 : 1) * Math.sqrt(Math.max(0, discriminant))) / 2;
  return q === 0 ? [0] : [q / a, c / q];
}
