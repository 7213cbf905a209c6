/** What is wanted of one response. */
export interface Desire {
  goal: 'higher' | 'lower' | 'target';
  /** Worthless at or below; needed for `higher` and `target`. */
  low?: number;
  /** Fully satisfying: from here on (`higher`), down from here (`lower`), or exactly here. */
  target: number;
  /** Worthless at or above; needed for `lower` and `target`. */
  high?: number;
  /** How the desirability rises between: 1 straight, above 1 only near the target, below 1 soon. */
  shape?: number;
  importance?: number;
}

/**
 * Desirability of one value, 0 to 1.
 * @throws RangeError where limits are missing or not in order.
 * Source: G. Derringer, R. Suich, J. Qual. Technol. 12 (1980) 214.
 */
export function desirability(value: number, desire: Desire): number {
  checkDesire(desire);
  const { goal, low, target, high, shape = 1 } = desire;
  const rising = value < target && goal !== 'lower';
  const falling = value > target && goal !== 'higher';
  if (rising) return value <= low! ? 0 : ((value - low!) / (target - low!)) ** shape;
  if (falling) return value >= high! ? 0 : ((high! - value) / (high! - target)) ** shape;
  return 1;
}

/**
 * Overall desirability: the geometric mean, weighted by importance; zero as soon as one response is worthless.
 * Source: importance weights: G. C. Derringer, Qual. Prog. 27 (1994) 51.
 */
export function overallDesirability(values: readonly number[], desires: readonly Desire[]): number {
  const weights = desires.map(({ importance = 1 }) => importance);
  const total = weights.reduce((sum, weight) => sum + weight, 0);
  const each = values.map((value, i) => desirability(value, desires[i]!));
  if (each.some((d) => d === 0)) return 0;
  return Math.exp(each.reduce((sum, d, i) => sum + weights[i]! * Math.log(d), 0) / total);
}

function checkDesire({ goal, low, target, high }: Desire): void {
  if (goal !== 'lower' && !(low !== undefined && low < target)) throw new RangeError('A response that should be higher, or on target, needs a low limit below its target.');
  if (goal !== 'higher' && !(high !== undefined && high > target)) throw new RangeError('A response that should be lower, or on target, needs a high limit above its target.');
}
