import type { Property } from './method.ts';

const USUAL = { low: 0, high: 5 };
const AIR = 0.06;

/** The ends of a graded property's scale. */
export function gradeScale({ scale }: Pick<Property, 'scale'>): { low: number; high: number } {
  return scale ?? USUAL;
}

/** The strip of a grade shows its whole scale, with some air; `null` for a measured number, whose strip finds its own. */
export function gradeDomain(property: Pick<Property, 'kind' | 'scale'>): [number, number] | null {
  if (property.kind !== 'grade') return null;
  const { low, high } = gradeScale(property);
  const air = (high - low) * AIR;
  return [low - air, high + air];
}

/** A sentence where one of `values` is no grade of the property's scale, or ''; always '' for a measured number. */
export function offScale(property: Pick<Property, 'title' | 'kind' | 'scale'>, ...values: (number | null)[]): string {
  if (property.kind !== 'grade') return '';
  const { low, high } = gradeScale(property);
  const odd = values.find((value) => value !== null && (value < low || value > high));
  return odd == null ? '' : `${property.title} is graded from ${low} to ${high}; ${odd} is outside that scale.`;
}
