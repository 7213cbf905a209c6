import { InputError } from '../../calculation/input-error.ts';
import type { Method, Property } from '../method.ts';
import type { InHouseMethod } from './in-house-method.ts';
import type { WrittenReading } from './written-method.ts';

/**
 * A property as its single readings are studied: of a share passing the grades themselves, or 1 for what passes and 0 for
 * what does not. Any other property is studied as it is.
 * @throws InputError for a share of numbers, whose readings have another unit
 */
export function studiedProperty(method: Method | InHouseMethod, property: Property): Property {
  const written = writtenOf(method, property);
  if (written?.statistic !== 'share-passing') return property;
  const grades = gradesOf(written.reading);
  if (!grades) throw new InputError('property', property.key, `${property.title} is a share of many readings; study the reading ${written.reading.label} itself, for example as a mean.`);
  return { ...property, unit: '', kind: 'grade', scale: { low: Math.min(...grades), high: Math.max(...grades) } };
}

/** A sentence where a studied reading is none of the grades that an in-house method has, or ''. */
export function offGrades(method: Method | InHouseMethod, property: Property, value: number): string {
  const written = writtenOf(method, property);
  const grades = written && gradesOf(written.reading);
  return grades && !grades.includes(value) ? `${property.title} is read as ${grades.join(', ')}; ${value} is none of these.` : '';
}

function writtenOf(method: Method | InHouseMethod, { key }: Property) {
  if (!('written' in method)) return null;
  const { readings, properties } = method.written;
  const property = properties.find((candidate) => candidate.key === key)!;
  return { statistic: property.statistic, reading: readings.find((candidate) => candidate.key === property.reading)! };
}

function gradesOf(reading: WrittenReading): number[] | null {
  if (reading.kind === 'number' || reading.kind === 'count') return null;
  return reading.kind === 'grade' ? reading.grades.map(({ grade }) => grade) : [0, 1];
}
