import type { MethodData } from '../../../shared-lib/method/method.ts';
import { allMethods } from '../../../shared-lib/registry/methods.ts';

/** The methods as data; their functions stay here. */
export function methodsList(): MethodData[] {
  return allMethods.map(({ evaluate: _evaluate, followUp: _followUp, ...method }) => method);
}
