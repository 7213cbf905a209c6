import { canonicalJson } from './canonical-json.ts';

/** The fields that differ, as they are since: a field that nobody changed is no statement, also when two benches are merged. */
export function onlyChanged<Fields extends object>(before: Fields, after: Fields): Partial<Fields> {
  return Object.fromEntries(Object.entries(after).filter(([key, value]) => canonicalJson(before[key as keyof Fields]) !== canonicalJson(value))) as Partial<Fields>;
}
