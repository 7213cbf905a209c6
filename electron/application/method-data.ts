import type { InHouseMethod } from '../../shared-lib/method/in-house/in-house-method.ts';
import type { Method, MethodData } from '../../shared-lib/method/method.ts';

/** A method as the screens are given it; its functions stay here, and so does what it was written down as. */
export function dataOf({ evaluate: _evaluate, followUp: _followUp, dueWhileRunning: _dueWhileRunning, ...method }: Method | InHouseMethod): MethodData {
  if (!('written' in method)) return method;
  const { written: _written, limits: _limits, ...data } = method;
  return data;
}
