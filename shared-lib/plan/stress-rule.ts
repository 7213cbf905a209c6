import type { Limit } from '../method/method.ts';
import type { Moment, PlanLine } from './plan.ts';

/** A test that a stress calls for. */
export interface Proposal extends Pick<PlanLine, 'methodId' | 'moment' | 'replicates'> {
  /** Only where the stress has one of these degrees; left out: always. */
  degrees?: readonly string[];
  /** Only where the print must endure this other stress as well. */
  besides?: string;
  /** What the specimens go through before; left out: nothing. */
  preparation?: string;
  conditions?: PlanLine['conditions'];
  limits: Limit[];
  /** Why this stress asks for it, in one sentence. */
  reason: string;
}

/** What one stress calls for. */
export interface StressRule {
  stress: string;
  proposals: readonly Proposal[];
}

/** Set by no standard and no law; the customer's specification takes its place. */
export const COMMON_PRACTICE = 'common practice';

export function atLeast(property: string, lower: number, source = COMMON_PRACTICE): Limit {
  return { property, lower, upper: null, source };
}

export function atMost(property: string, upper: number, source = COMMON_PRACTICE): Limit {
  return { property, lower: null, upper, source };
}

export function within(property: string, lower: number, upper: number, source = COMMON_PRACTICE): Limit {
  return { property, lower, upper, source };
}

export const onFilm: Moment = { from: 'film', hours: 0 };
export const onPress: Moment = { from: 'printing', hours: 0 };
export const dayAfterPrinting: Moment = { from: 'printing', hours: 24 };

export function daysAfterPrinting(days: number): Moment {
  return { from: 'printing', hours: 24 * days };
}

export function daysAfterLamination(days: number): Moment {
  return { from: 'lamination', hours: 24 * days };
}
