import type { Property } from '../method/method.ts';
import type { Response } from '../notebook/trial-entries.ts';

/** The key of a response in a trial set. */
export function responseKey({ methodId, property }: Pick<Response, 'methodId' | 'property'>): string {
  return `${methodId}/${property}`;
}

/** 'higher is better', with what is good enough and what is of no use: 'higher is better, enough at 3.5 N/15 mm, useless below 2 N/15 mm'. */
export function goalText({ goal, target, lowest, highest }: Response, { unit }: Pick<Property, 'unit'>): string {
  const value = (number: number) => `${String(number).replace('-', '−')}${unit ? ` ${unit}` : ''}`;
  const parts = [goal === 'target' ? `best at ${value(target!)}` : `${goal} is better`];
  if (goal !== 'target' && target !== null) parts.push(`enough at ${value(target)}`);
  if (goal !== 'lower' && lowest !== null) parts.push(`of no use below ${value(lowest)}`);
  if (goal !== 'higher' && highest !== null) parts.push(`of no use above ${value(highest)}`);
  return parts.join(', ');
}

/** The ends of what is of use, as limits of the strips. */
export function usefulRange({ goal, lowest, highest }: Response): { lower: number | null; upper: number | null } {
  return { lower: goal === 'lower' ? null : lowest, upper: goal === 'higher' ? null : highest };
}
