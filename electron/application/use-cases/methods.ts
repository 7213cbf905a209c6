import type { Method } from '../../../shared-lib/method/method.ts';
import { allMethods } from '../../../shared-lib/registry/methods.ts';

/** The methods as data; the evaluation stays here, for functions do not travel. */
export function methodsList(): Omit<Method, 'evaluate'>[] {
  return allMethods.map(({ evaluate: _stays, ...method }) => method);
}
