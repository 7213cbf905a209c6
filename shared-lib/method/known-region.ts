import type { ResultValue } from '../calculation/result.ts';
import type { VerdictRule } from './property-verdict.ts';

/** Where the true value is taken to lie; an open side is ±Infinity. Internal to the verdict: never stored. */
export interface KnownRegion {
  low: number;
  high: number;
}

/**
 * What a result lets one say about its true value under a rule, or `null` where it says nothing.
 * - `exact`: the value itself (simple), or its interval (guarded; a side that is not given counts as open).
 * - `at-least` / `at-most`: from the bound to the open side, under both rules. Under the guarded rule the bound's own
 *   interval end is used where there is one.
 * - `between`: the bracket under both rules; its middle is no estimate.
 */
export function knownRegion(result: ResultValue, rule: VerdictRule): KnownRegion | null {
  const { value, low, high, bound } = result;
  switch (bound) {
    case 'exact':
      if (rule === 'simple') return value === null ? null : { low: value, high: value };
      return low === null && high === null ? null : { low: low ?? -Infinity, high: high ?? Infinity };
    case 'at-least': {
      const from = rule === 'guarded' ? (low ?? value) : (value ?? low);
      return from === null ? null : { low: from, high: Infinity };
    }
    case 'at-most': {
      const to = rule === 'guarded' ? (high ?? value) : (value ?? high);
      return to === null ? null : { low: -Infinity, high: to };
    }
    case 'between':
      return low === null && high === null ? null : { low: low ?? -Infinity, high: high ?? Infinity };
  }
}
