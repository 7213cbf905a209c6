import type { Field, Method } from '../../shared-lib/method/method.ts';
import { allMethods } from '../../shared-lib/registry/methods.ts';
import { Refusal } from './refusal.ts';

/** @throws Refusal when this version of the program has no such method */
export function methodNamed(methodId: string): Method {
  const method = findMethod(methodId);
  if (!method) throw new Refusal('not-found', `This version of Laydown has no method '${methodId}'; the notebook may come from a newer one.`);
  return method;
}

/** For lists, which still show a test whose method is not known here. */
export function findMethod(methodId: string): Method | undefined {
  return allMethods.find((method) => method.id === methodId);
}

/** @throws Refusal when the method has no such field */
export function fieldNamed(fields: Field[], key: string): Field {
  const field = fields.find((candidate) => candidate.key === key);
  if (!field) throw new Refusal('not-found', `This sheet has no field '${key.slice(0, 60)}'.`);
  return field;
}
