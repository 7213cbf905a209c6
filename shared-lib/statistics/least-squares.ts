import { factorise, solveUpper } from './householder.ts';

/** Residuals at a point; any that is not finite marks forbidden ground. */
export type Residuals = (parameters: readonly number[]) => Numbers;
type Numbers = Float64Array | readonly number[];

export interface LeastSquaresOptions {
  lower?: readonly number[];
  upper?: readonly number[];
  /** Usual size of each parameter, for difference steps where it comes near zero; default: that of its start. */
  typical?: readonly number[];
  /** First damping λ, relative to the squared column norms of the Jacobian. */
  damping?: number;
  maxIterations?: number;
}

export interface LeastSquaresMinimum {
  parameters: number[];
  sumOfSquares: number;
  /** Columns of the Jacobian of the residuals at the solution, one per parameter. */
  jacobian: Float64Array[];
  /** Parameters held at a bound against which the fit presses. */
  atBound: boolean[];
  /** The residuals stand at right angles to every direction the parameters can take. */
  converged: boolean;
}

/** Relative step of central differences: the cube root of the resolution of a double balances both errors. */
const DIFFERENCE = 6e-6;
/** Share of its usual size below which a parameter's step is held. */
const NEAR_ZERO = 1e-4;
/** Undamped steps at the end, and the relative size up to which one is a matter of last digits. */
const POLISHING = 2;
const POLISHED = 1e-5;
const SMALLEST_STEP = 1e-13;
const MOST_DAMPING = 1e20;
/** Largest cosine between residuals and tangent plane at an accepted solution. */
const ORTHOGONAL = 1e-5;

/**
 * Levenberg–Marquardt minimum of a sum of squares, within bounds if given. The damping is scaled by the largest column
 * norms met so far (Moré), each step is solved by Householder QR and not by normal equations, and only steps that
 * reduce the sum are taken. Written here because the npm package for it (ml-levenberg-marquardt) reaches a wrong answer
 * without a warning on most NIST StRD sets at its defaults and returns no covariance.
 * @throws RangeError when a residual is not finite at the start.
 * Source: J. J. Moré, Lecture Notes in Mathematics 630 (1978) 105; test of convergence: D. M. Bates, D. G. Watts,
 * Technometrics 23 (1981) 179.
 */
export function minimiseResiduals(residuals: Residuals, start: readonly number[], options: LeastSquaresOptions = {}): LeastSquaresMinimum {
  const { lower, upper, maxIterations = 2000 } = options;
  const typical = options.typical ?? start.map((value) => Math.abs(value) || 1);
  let damping = options.damping ?? 1e-3;
  let parameters = start.map((value, i) => within(value, lower?.[i], upper?.[i]));
  let current = residuals(parameters);
  if (!Number.isFinite(sumOfSquares(current))) throw new RangeError('The curve is not finite at the starting values.');
  const scale = parameters.map(() => 0);
  const slopes = () => differentiate(residuals, parameters, current, typical, lower, upper);
  let jacobian = slopes();

  for (let iteration = 0; iteration < maxIterations && damping < MOST_DAMPING; iteration++) {
    jacobian.forEach((column, i) => (scale[i] = Math.max(scale[i]!, norm(column))));
    const free = freeParameters(parameters, jacobian, current, lower, upper);
    if (free.length === 0) break;
    const step = dampedStep(jacobian, current, scale, free, damping);
    const trial = parameters.map((value, i) => within(value + step[i]!, lower?.[i], upper?.[i]));
    const settled = trial.every((value, i) => Math.abs(value - parameters[i]!) <= SMALLEST_STEP * (Math.abs(value) + SMALLEST_STEP));
    const there = residuals(trial);
    if (trial.every(Number.isFinite) && change(current, there) < 0) {
      parameters = trial;
      current = there;
      damping = Math.max(damping / 10, 1e-20);
      jacobian = slopes();
    } else {
      damping *= 10;
    }
    if (settled) break;
  }

  // Comparing sums settles half the digits; an undamped step from there settles the rest.
  for (let round = 0; round < POLISHING; round++) {
    const free = freeParameters(parameters, jacobian, current, lower, upper);
    const step = dampedStep(jacobian, current, scale, free, 0);
    const trial = parameters.map((value, i) => within(value + step[i]!, lower?.[i], upper?.[i]));
    if (!parameters.every((value, i) => Math.abs(trial[i]! - value) <= POLISHED * Math.max(Math.abs(value), NEAR_ZERO * typical[i]!))) break;
    const there = residuals(trial);
    if (!(sumOfSquares(there) <= sumOfSquares(current) * (1 + 1e-10))) break;
    parameters = trial;
    current = there;
    jacobian = slopes();
  }

  const free = freeParameters(parameters, jacobian, current, lower, upper);
  return {
    parameters,
    sumOfSquares: sumOfSquares(current),
    jacobian,
    atBound: parameters.map((_, i) => !free.includes(i)),
    converged: isRounding(current, jacobian, parameters) || cosineToTangent(free.map((i) => jacobian[i]!), current) <= ORTHOGONAL,
  };
}

function within(value: number, lower = -Infinity, upper = Infinity): number {
  return Math.min(Math.max(value, lower), upper);
}

function sumOfSquares(values: Numbers): number {
  let sum = 0;
  for (const value of values) sum += value * value;
  return sum;
}

/** Change of the sum of squares, free of the cancellation between two nearly equal sums. */
function change(from: Numbers, to: Numbers): number {
  let sum = 0;
  for (let i = 0; i < to.length; i++) sum += (to[i]! - from[i]!) * (to[i]! + from[i]!);
  return sum;
}

function norm(values: Numbers): number {
  return Math.sqrt(sumOfSquares(values));
}

/** Central differences; beside a bound or forbidden ground, the difference on the side that can be had. */
function differentiate(residuals: Residuals, point: readonly number[], current: Numbers, typical: readonly number[], lower?: readonly number[], upper?: readonly number[]): Float64Array[] {
  return point.map((value, i) => {
    const h = DIFFERENCE * Math.max(Math.abs(value), NEAR_ZERO * typical[i]!);
    const at = (shifted: number) => {
      if (shifted !== within(shifted, lower?.[i], upper?.[i])) return null;
      const there = residuals(point.map((other, j) => (i === j ? shifted : other)));
      return Number.isFinite(sumOfSquares(there)) ? there : null;
    };
    const ahead = at(value + h);
    const behind = at(value - h);
    const to = ahead ?? current;
    const from = behind ?? current;
    const width = (ahead ? value + h : value) - (behind ? value - h : value);
    return Float64Array.from(to, (residual, k) => (width === 0 ? 0 : (residual - from[k]!) / width));
  });
}

/** Parameters that are inside their bounds or would move back inside. */
function freeParameters(point: readonly number[], jacobian: readonly Float64Array[], current: Numbers, lower?: readonly number[], upper?: readonly number[]): number[] {
  return point.flatMap((value, i) => {
    const gradient = jacobian[i]!.reduce((total, slope, k) => total + slope * current[k]!, 0);
    const held = (value <= (lower?.[i] ?? -Infinity) && gradient >= 0) || (value >= (upper?.[i] ?? Infinity) && gradient <= 0);
    return held ? [] : [i];
  });
}

function dampedStep(jacobian: readonly Float64Array[], current: Numbers, scale: readonly number[], free: readonly number[], damping: number): number[] {
  const rows = current.length;
  const right = new Float64Array(rows + free.length);
  for (let k = 0; k < rows; k++) right[k] = -current[k]!;
  const columns = free.map((i, place) => {
    const column = new Float64Array(rows + free.length);
    column.set(jacobian[i]!);
    column[rows + place] = Math.sqrt(damping) * (scale[i] || 1);
    return column;
  });
  const { upper, rotated } = factorise(columns, right);
  const solved = solveUpper(upper, rotated);
  const step = jacobian.map(() => 0);
  free.forEach((i, place) => (step[i] = solved[place]!));
  return step;
}

/** Whether the fit is exact: the residuals are no larger than the rounding of the curve itself. */
function isRounding(current: Numbers, jacobian: readonly Float64Array[], parameters: readonly number[]): boolean {
  const size = jacobian.reduce((sum, column, i) => sum + norm(column) * Math.abs(parameters[i]!), 0);
  return norm(current) <= 1e-12 * size;
}

/** Share of the residual vector that the parameters could still take up. */
function cosineToTangent(columns: readonly Float64Array[], current: Numbers): number {
  const length = norm(current);
  if (length === 0 || columns.length === 0) return 0;
  const scaled = columns.map((column) => {
    const size = norm(column) || 1;
    return column.map((slope) => slope / size);
  });
  const { rotated } = factorise(scaled, current);
  return norm(rotated.subarray(0, columns.length)) / length;
}
