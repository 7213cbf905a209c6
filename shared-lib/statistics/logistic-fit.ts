/** Specimens tried at one setting x, and how many of them had the event. */
export interface EventStep {
  x: number;
  tried: number;
  events: number;
}

/** ln(p/(1 − p)) = intercept + slope·x. */
export interface LogisticFit {
  intercept: number;
  slope: number;
  /** Of intercept and slope, from the information of the likelihood. */
  covariance: [[number, number], [number, number]];
  logLikelihood: number;
  /** Twice the distance to a model with a share of its own at each x. */
  deviance: number;
  /** Distinct x less the two parameters. */
  degreesOfFreedom: number;
}

const MOST_ROUNDS = 100;

/**
 * Share of events against x by maximum likelihood (logistic regression). Steps at the same x are pooled.
 * @returns `null` where the likelihood has no peak: no event, nothing but events, or one x that parts those with from
 *   those without (steps on either side are then all one or all the other), so that any steeper slope fits better still.
 * @throws RangeError for fewer than two distinct x, counts that are not whole or events above those tried.
 * Source: P. McCullagh, J. A. Nelder, Generalized Linear Models, 2nd ed. (1989), chapter 4; without a peak:
 * A. Albert, J. A. Anderson, Biometrika 71 (1984) 1.
 */
export function fitLogistic(steps: readonly EventStep[]): LogisticFit | null {
  const pooled = poolSteps(steps);
  if (pooled.length < 2) throw new RangeError('A share against x needs at least two different x.');
  if (isSeparated(pooled)) return null;
  const centre = pooled.reduce((sum, { x, tried }) => sum + x * tried, 0) / pooled.reduce((sum, { tried }) => sum + tried, 0);
  const scale = pooled.at(-1)!.x - pooled[0]!.x;
  const scaled = pooled.map((step) => ({ ...step, x: (step.x - centre) / scale }));
  const [a, b] = newton(scaled);
  const [[vaa, vab], [, vbb]] = inverse(informationOf(scaled, a, b));
  const slope = b / scale;
  const shift = centre / scale;
  return {
    intercept: a - slope * centre,
    slope,
    covariance: [
      [vaa - 2 * shift * vab + shift * shift * vbb, (vab - shift * vbb) / scale],
      [(vab - shift * vbb) / scale, vbb / scale ** 2],
    ],
    logLikelihood: logisticLogLikelihood(scaled, (x) => a + b * x),
    deviance: Math.max(0, 2 * (saturated(pooled) - logisticLogLikelihood(scaled, (x) => a + b * x))),
    degreesOfFreedom: pooled.length - 2,
  };
}

/** One step per x, in rising order. @throws RangeError for counts that are not whole or events above those tried. */
export function poolSteps(steps: readonly EventStep[]): EventStep[] {
  const at = new Map<number, EventStep>();
  for (const { x, tried, events } of steps) {
    if (!Number.isFinite(x) || !Number.isInteger(tried) || !Number.isInteger(events) || tried < 1 || events < 0 || events > tried) {
      throw new RangeError(`A step needs an x and whole counts with 0 ≤ events ≤ tried, not ${events} of ${tried} at ${x}.`);
    }
    const so = at.get(x) ?? { x, tried: 0, events: 0 };
    at.set(x, { x, tried: so.tried + tried, events: so.events + events });
  }
  return [...at.values()].sort((a, b) => a.x - b.x);
}

/** Log-likelihood of steps for a share with these log odds at x, without the binomial coefficients. */
export function logisticLogLikelihood(steps: readonly EventStep[], logOdds: (x: number) => number): number {
  return steps.reduce((sum, { x, tried, events }) => {
    const z = logOdds(x);
    // ln p = −ln(1 + e^−z), ln(1 − p) = −ln(1 + e^z); a count of 0 contributes nothing however unlikely.
    return sum - (events > 0 ? events * softplus(-z) : 0) - (tried > events ? (tried - events) * softplus(z) : 0);
  }, 0);
}

/** 1/(1 + e^−z). */
export function logistic(z: number): number {
  return z < 0 ? Math.exp(z) / (1 + Math.exp(z)) : 1 / (1 + Math.exp(-z));
}

/** ln(1 + e^z). */
function softplus(z: number): number {
  return z > 0 ? z + Math.log1p(Math.exp(-z)) : Math.log1p(Math.exp(z));
}

function isSeparated(steps: readonly EventStep[]): boolean {
  const having = steps.filter(({ events }) => events > 0).map(({ x }) => x);
  const without = steps.filter(({ tried, events }) => tried > events).map(({ x }) => x);
  return Math.max(...without) <= Math.min(...having) || Math.max(...having) <= Math.min(...without);
}

function newton(steps: readonly EventStep[]): [number, number] {
  let at: [number, number] = [0, 0];
  let value = logisticLogLikelihood(steps, () => 0);
  for (let round = 0; round < MOST_ROUNDS; round++) {
    const [a, b] = at;
    const residuals = steps.map(({ x, tried, events }) => events - tried * logistic(a + b * x));
    const gradient = [residuals.reduce((sum, r) => sum + r, 0), residuals.reduce((sum, r, i) => sum + r * steps[i]!.x, 0)] as const;
    const [[vaa, vab], [, vbb]] = inverse(informationOf(steps, a, b));
    let move: [number, number] = [vaa * gradient[0] + vab * gradient[1], vab * gradient[0] + vbb * gradient[1]];
    let next = value;
    let to: [number, number] = at;
    for (let halving = 0; halving < 40; halving++) {
      to = [a + move[0], b + move[1]];
      next = logisticLogLikelihood(steps, (x) => to[0] + to[1] * x);
      if (next >= value) break;
      move = [move[0] / 2, move[1] / 2];
    }
    if (!(next >= value)) break;
    const moved = Math.max(Math.abs(to[0] - a), Math.abs(to[1] - b));
    [at, value] = [to, next];
    if (moved <= 1e-13 * (1 + Math.abs(a) + Math.abs(b))) break;
  }
  return at;
}

type Symmetric = [[number, number], [number, number]];

function informationOf(steps: readonly EventStep[], a: number, b: number): Symmetric {
  let [aa, ab, bb] = [0, 0, 0];
  for (const { x, tried } of steps) {
    const p = logistic(a + b * x);
    const weight = tried * p * (1 - p);
    aa += weight;
    ab += weight * x;
    bb += weight * x * x;
  }
  return [[aa, ab], [ab, bb]];
}

function inverse([[aa, ab], [, bb]]: Symmetric): Symmetric {
  const determinant = aa * bb - ab * ab;
  return [[bb / determinant, -ab / determinant], [-ab / determinant, aa / determinant]];
}

function saturated(steps: readonly EventStep[]): number {
  return steps.reduce((sum, { tried, events }) => {
    const part = (count: number) => (count > 0 ? count * Math.log(count / tried) : 0);
    return sum + part(events) + part(tried - events);
  }, 0);
}
