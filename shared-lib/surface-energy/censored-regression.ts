import { normalLogDensity } from '../statistics/distributions.ts';
import { logProbability } from '../statistics/normal-likelihood.ts';

/** A reading to regress: its basis values, and where it lies; `low === high` exact, ±Infinity open. */
export interface CensoredPoint {
  basis: readonly number[];
  low: number;
  high: number;
}

export interface CensoredRegression {
  coefficients: number[];
  standardDeviation: number;
  logLikelihood: number;
}

const mostSteps = 60;

/**
 * Linear regression with normal scatter on exact, bracketed and one-sided readings, by maximum likelihood. In
 * coefficients/σ and 1/σ the likelihood is concave, so Newton's steps find its one peak.
 * Source: Olsen, Econometrica 46 (1978) 1211; Burridge, J. R. Stat. Soc. B 43 (1981) 41.
 *
 * @param smallestSd σ is held at or above this: brackets that a curve passes without scatter have their peak at σ = 0
 */
export function censoredRegression(points: readonly CensoredPoint[], smallestSd: number): CensoredRegression {
  const width = points[0]!.basis.length;
  const highestPrecision = 1 / smallestSd;
  let at = [...startingCoefficients(points), 1];
  const startPrecision = Math.min(highestPrecision, 1 / Math.max(residualSize(points, at), smallestSd));
  at = at.map((value, index) => (index === width ? startPrecision : value * startPrecision));
  let current = derivatives(points, at);
  for (let step = 0; step < mostSteps; step++) {
    const pinned = at[width]! >= highestPrecision && current.gradient[width]! > 0;
    const direction = newtonDirection(current, pinned ? width : width + 1);
    let fraction = 1;
    let next = moved(at, direction, fraction, highestPrecision);
    let reached = derivatives(points, next);
    while (!(reached.value >= current.value) && fraction > 1e-8) {
      fraction /= 4;
      next = moved(at, direction, fraction, highestPrecision);
      reached = derivatives(points, next);
    }
    const gain = reached.value - current.value;
    if (!(gain >= 0)) break;
    at = next;
    current = reached;
    if (gain < 1e-11) break;
  }
  const precision = at[width]!;
  return {
    coefficients: at.slice(0, width).map((value) => value / precision),
    standardDeviation: 1 / precision,
    logLikelihood: current.value,
  };
}

interface Derivatives {
  value: number;
  gradient: number[];
  /** Minus the second derivatives: positive definite. */
  information: number[][];
}

/** Log-likelihood and derivatives by coefficients · h and, last, the precision h. */
function derivatives(points: readonly CensoredPoint[], at: readonly number[]): Derivatives {
  const width = at.length - 1;
  const h = at[width]!;
  const gradient = new Array<number>(width + 1).fill(0);
  const information = gradient.map(() => new Array<number>(width + 1).fill(0));
  let value = 0;
  for (const { basis, low, high } of points) {
    let mean = 0;
    for (let j = 0; j < width; j++) mean += basis[j]! * at[j]!;
    const term = low === high ? exactTerm(low, mean, h) : bracketTerm(low, high, mean, h);
    value += term.value;
    gradient[width]! += term.byPrecision;
    information[width]![width]! -= term.byPrecisionTwice;
    for (let j = 0; j < width; j++) {
      gradient[j]! += term.byMean * basis[j]!;
      information[j]![width]! -= term.mixed * basis[j]!;
      information[width]![j]! -= term.mixed * basis[j]!;
      for (let k = 0; k < width; k++) information[j]![k]! -= term.byMeanTwice * basis[j]! * basis[k]!;
    }
  }
  return { value, gradient, information };
}

interface Term {
  value: number;
  byMean: number;
  byMeanTwice: number;
  byPrecision: number;
  byPrecisionTwice: number;
  mixed: number;
}

function exactTerm(y: number, mean: number, h: number): Term {
  const z = h * y - mean;
  return {
    value: Math.log(h) + normalLogDensity(z),
    byMean: z,
    byMeanTwice: -1,
    byPrecision: 1 / h - z * y,
    byPrecisionTwice: -1 / (h * h) - y * y,
    mixed: y,
  };
}

function bracketTerm(low: number, high: number, mean: number, h: number): Term {
  const za = h * low - mean;
  const zb = h * high - mean;
  const value = logProbability(za, zb);
  const [ua, a, wa] = Number.isFinite(low) ? [Math.exp(normalLogDensity(za) - value), low, za] : [0, 0, 0];
  const [ub, b, wb] = Number.isFinite(high) ? [Math.exp(normalLogDensity(zb) - value), high, zb] : [0, 0, 0];
  const byMean = ua - ub;
  const byPrecision = ub * b - ua * a;
  return {
    value,
    byMean,
    byPrecision,
    byMeanTwice: ua * wa - ub * wb - byMean * byMean,
    byPrecisionTwice: ua * wa * a * a - ub * wb * b * b - byPrecision * byPrecision,
    mixed: ub * wb * b - ua * wa * a - byMean * byPrecision,
  };
}

function moved(at: number[], direction: number[], fraction: number, highestPrecision: number): number[] {
  const last = at.length - 1;
  return at.map((value, index) => {
    const next = value + fraction * (direction[index] ?? 0);
    return index === last ? Math.min(highestPrecision, Math.max(value / 10, next)) : next;
  });
}

/** Newton's step in the first `size` coordinates by elimination; a little is added to the diagonal where it is singular. */
function newtonDirection({ gradient, information }: Derivatives, size: number): number[] {
  const matrix = Array.from({ length: size }, (_, i) => [...information[i]!.slice(0, size), gradient[i]!]);
  for (let i = 0; i < size; i++) matrix[i]![i]! += 1e-12 * (Math.abs(information[i]![i]!) + 1e-6);
  for (let i = 0; i < size; i++) {
    const pivot = matrix.slice(i).reduce((best, row, k) => (Math.abs(row[i]!) > Math.abs(matrix[best]![i]!) ? i + k : best), i);
    [matrix[i], matrix[pivot]] = [matrix[pivot]!, matrix[i]!];
    for (let k = i + 1; k < size; k++) {
      const factor = matrix[k]![i]! / matrix[i]![i]!;
      for (let j = i; j <= size; j++) matrix[k]![j]! -= factor * matrix[i]![j]!;
    }
  }
  const step = new Array<number>(size).fill(0);
  for (let i = size - 1; i >= 0; i--) {
    let sum = matrix[i]![size]!;
    for (let j = i + 1; j < size; j++) sum -= matrix[i]![j]! * step[j]!;
    step[i] = sum / matrix[i]![i]!;
  }
  return step.every(Number.isFinite) ? step : gradient.slice(0, size);
}

/** Where a reading most simply is: the middle of its bracket or its one known end. */
function simpleValue({ low, high }: CensoredPoint): number {
  if (!Number.isFinite(low)) return high;
  return Number.isFinite(high) ? (low + high) / 2 : low;
}

/** Least squares of the simple values, one or two coefficients. */
function startingCoefficients(points: readonly CensoredPoint[]): number[] {
  let [xx, xz, zz, xy, zy] = [0, 0, 0, 0, 0];
  for (const point of points) {
    const [x, z] = [point.basis[0]!, point.basis[1] ?? 0];
    const y = simpleValue(point);
    xx += x * x;
    xz += x * z;
    zz += z * z;
    xy += x * y;
    zy += z * y;
  }
  if (points[0]!.basis.length === 1) return [xx > 0 ? xy / xx : 0];
  const determinant = xx * zz - xz * xz;
  if (!(determinant > 1e-14 * xx * zz)) return [xx > 0 ? xy / xx : 0, 0];
  return [(xy * zz - zy * xz) / determinant, (zy * xx - xy * xz) / determinant];
}

function residualSize(points: readonly CensoredPoint[], at: readonly number[]): number {
  const squares = points.reduce((sum, point) => {
    const mean = point.basis.reduce((value, x, j) => value + x * at[j]!, 0);
    return sum + (simpleValue(point) - mean) ** 2;
  }, 0);
  return Math.sqrt(squares / points.length);
}
