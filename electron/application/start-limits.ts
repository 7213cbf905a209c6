import { isDeepStrictEqual } from 'node:util';
import type { Limit, Method } from '../../shared-lib/method/method.ts';
import type { VerdictRule } from '../../shared-lib/method/property-verdict.ts';
import type { OpenNotebook } from './open-notebook.ts';
import { lastLimits } from './queries/tests.ts';

/**
 * What a new test begins with: the limits last set for this method on this product; those of an in-house method itself where
 * none were set, or where the last test had only those of its own version.
 */
export function startLimits({ store, methods }: OpenNotebook, { id, properties }: Method, product: string): { limits: Limit[]; rule: VerdictRule } {
  const last = lastLimits(store, id, product);
  const rule = last?.rule ?? 'guarded';
  const own = methods.inHouse(id)?.limits ?? [];
  const ownBefore = last ? (methods.inHouse(id, last.methodVersion)?.limits ?? []) : [];
  if (!last || isDeepStrictEqual(last.limits, ownBefore)) return { limits: own, rule };
  return { limits: last.limits.filter(({ property }) => properties.some(({ key }) => key === property)), rule };
}
