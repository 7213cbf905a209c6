import type { ResultValue } from '../calculation/result.ts';

export interface LifeRatio {
  ratio: number;
  /** Ends of its interval; `null` where one of the lives has no end on that side. */
  low: number | null;
  high: number | null;
}

/**
 * How many times as long one life is as another, with the interval that follows from those of both, on the scale of their
 * logarithms. `null` where either is a bound or not known.
 * Source: recovery of variances from the limits, G. Y. Zou, A. Donner, Stat. Med. 27 (2008) 1693.
 */
export function ratioOfLives(life: ResultValue, other: ResultValue): LifeRatio | null {
  if (life.bound !== 'exact' || other.bound !== 'exact' || life.value === null || other.value === null) return null;
  const ratio = life.value / other.value;
  const reach = (a: number | null, b: number | null) => (a === null || b === null || a <= 0 || b <= 0 ? null : Math.hypot(Math.log(a), Math.log(b)));
  const down = reach(life.low === null ? null : life.value / life.low, other.high === null ? null : other.high / other.value);
  const up = reach(life.high === null ? null : life.high / life.value, other.low === null ? null : other.value / other.low);
  return { ratio, low: down === null ? null : ratio * Math.exp(-down), high: up === null ? null : ratio * Math.exp(up) };
}
