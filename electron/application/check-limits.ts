import { InputError } from '../../shared-lib/calculation/input-error.ts';
import { offScale } from '../../shared-lib/method/grade-scale.ts';
import type { Limit, Method } from '../../shared-lib/method/method.ts';
import { withUnit } from './with-unit.ts';

/**
 * Limits of one method: on properties that take one, each once, within the scale of grades, the lower not above the upper.
 * @param at the field that the limits stand in, for what is refused
 * @throws InputError for the first that cannot be
 */
export function checkLimits(method: Method, limits: readonly Limit[], at: string): void {
  limits.forEach((limit, index) => {
    const field = `${at}[${index}]`;
    const property = method.properties.find((candidate) => candidate.key === limit.property);
    if (!property?.limited) throw new InputError(`${field}.property`, limit.property, `${method.title} has no property '${limit.property}' that takes a limit.`);
    if (limits.findIndex((other) => other.property === limit.property) !== index) {
      throw new InputError(`${field}.property`, limit.property, `${property.title} has two limits; put both ends in one.`);
    }
    const odd = offScale(property, limit.lower, limit.upper);
    if (odd) throw new InputError(`${field}.${offScale(property, limit.lower) ? 'lower' : 'upper'}`, limit.lower ?? limit.upper, odd);
    if (limit.lower !== null && limit.upper !== null && limit.lower > limit.upper) {
      throw new InputError(`${field}.lower`, limit.lower, `The lower limit of ${property.title} (${withUnit(limit.lower, property.unit)}) lies above the upper one (${withUnit(limit.upper, property.unit)}).`);
    }
  });
}
