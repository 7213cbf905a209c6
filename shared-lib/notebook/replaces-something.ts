import { canonicalJson } from './canonical-json.ts';

/** Whether something that was said is said otherwise since: that asks for a reason. What was not said yet is only added. */
export function replacesSomething<Fields extends object>(before: Fields, after: Fields): boolean {
  return Object.entries(before).some(([key, said]) => !isNothing(said) && canonicalJson(said) !== canonicalJson(after[key as keyof Fields]));
}

function isNothing(said: unknown): boolean {
  return said === null || said === '' || (Array.isArray(said) && said.length === 0);
}
