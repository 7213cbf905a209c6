import type { ResultValue } from '../calculation/result.ts';
import type { EventStep } from '../statistics/logistic-fit.ts';

/**
 * What steps without a mixture of passing and failing say about the temperature at which a share `q` fails: bounds, for no
 * curve can be laid through them. All that is asked is that heat does not help, so that the share that fails never falls.
 * - At least c: from c up to the first failure so many passed that with a share of q failing at c, chance would not do it.
 * - At most c: likewise, from the last pass up to c so many failed.
 * Each end holds at `level` by itself; both together are a bracket. A step in which some passed and some failed says
 * neither. `value` is `null` where too few were tested for a bound.
 * @param steps in rising order of temperature, x in °C.
 */
export function heatBounds(steps: readonly EventStep[], q: number, level: number): ResultValue {
  const n = steps.reduce((sum, { tried }) => sum + tried, 0);
  const firstFailing = steps.findIndex(({ events }) => events > 0);
  const passing = firstFailing === -1 ? steps : steps.slice(0, firstFailing);
  const failing = steps.slice(steps.findLastIndex(({ tried, events }) => events < tried) + 1);
  const low = reached([...passing].reverse(), 1 - q, level);
  const high = reached(failing, q, level);
  const limits = { unit: '°C', low, high, level: null, n };
  if (low !== null && high !== null) return { ...limits, value: (low + high) / 2, bound: 'between' };
  if (high !== null) return { ...limits, value: high, bound: 'at-most' };
  if (low !== null) return { ...limits, value: low, bound: 'at-least' };
  return { ...limits, value: null, bound: passing.length > 0 ? 'at-least' : 'at-most' };
}

/** Specimens that must agree before chance, which lets one agree with probability `share`, is ruled out at `level`. */
export function needed(share: number, level: number): number {
  return Math.ceil(Math.log(1 - level) / Math.log(share) - 1e-9);
}

/** The step, going away from the change, by which enough specimens agree. */
function reached(steps: readonly EventStep[], share: number, level: number): number | null {
  let count = 0;
  for (const { x, tried } of steps) {
    count += tried;
    if (count >= needed(share, level)) return x;
  }
  return null;
}
