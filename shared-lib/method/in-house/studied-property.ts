import { InputError } from '../../calculation/input-error.ts';
import type { Method, Property } from '../method.ts';
import type { InHouseMethod } from './in-house-method.ts';

/**
 * A property as its single readings are studied: of a share passing the grades themselves, or 1 for what passes and 0 for
 * what does not. Any other property is studied as it is.
 * @throws InputError for a share of numbers, whose readings have another unit
 */
export function studiedProperty(method: Method | InHouseMethod, property: Property): Property {
  if (!('written' in method)) return property;
  const { statistic, reading: key } = method.written.properties.find((candidate) => candidate.key === property.key)!;
  if (statistic !== 'share-passing') return property;
  const reading = method.written.readings.find((candidate) => candidate.key === key)!;
  if (reading.kind === 'number' || reading.kind === 'count') {
    throw new InputError('property', property.key, `${property.title} is a share of many readings; study the reading ${reading.label} itself, for example as a mean.`);
  }
  const grades = reading.kind === 'grade' ? reading.grades.map(({ grade }) => grade) : [0, 1];
  return { ...property, unit: '', kind: 'grade', scale: { low: Math.min(...grades), high: Math.max(...grades) } };
}
