/** A decay curve `base + size · shape(t)`: linear but for at most one parameter of its shape. */
export interface DecayModel {
  id: 'exponential' | 'log-time';
  title: string;
  formula: string;
  /** Parameters of the curve, without the scatter. */
  parameters: number;
  /** Shape at `days` (Infinity allowed where the curve levels off). */
  shape: (days: number, rate: number) => number;
  /** Rates searched, falling apart on a log scale; a single 1 where the shape has no parameter. */
  rates: (days: readonly number[]) => { low: number; high: number } | null;
}

/**
 * Decay to a floor: γ = floor + (initial − floor) e^(−rate · t). Slower than a tenth of e-fold over the whole time it cannot be
 * told from a straight line, faster than four e-folds before the first reading not from a step: the search stops there.
 */
export const exponentialToFloor: DecayModel = {
  id: 'exponential',
  title: 'exponential to a floor',
  formula: 'γ = floor + (initial − floor) · e^(−rate · t)',
  parameters: 3,
  shape: (days, rate) => Math.exp(-rate * days),
  rates: (days) => ({ low: 0.1 / Math.max(...days), high: 4 / Math.min(...days.filter((day) => day > 0)) }),
};

/** Decay with the logarithm of time: γ = initial − rate · log₁₀(1 + t), t in days. It has no floor. */
export const logTime: DecayModel = {
  id: 'log-time',
  title: 'log-time',
  formula: 'γ = initial − rate · log₁₀(1 + t)',
  parameters: 2,
  shape: (days) => Math.log10(1 + days),
  rates: () => null,
};
