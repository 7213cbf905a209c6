import type { Field } from '../../shared-lib/method/method.ts';
import { Refusal } from './refusal.ts';

/** @throws Refusal when the method has no such field */
export function fieldNamed(fields: Field[], key: string): Field {
  const field = fields.find((candidate) => candidate.key === key);
  if (!field) throw new Refusal('not-found', `This sheet has no field '${key.slice(0, 60)}'.`);
  return field;
}
