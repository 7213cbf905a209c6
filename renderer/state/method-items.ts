import type { MethodData } from '../../shared-lib/method/method.ts';
import type { Pickable } from './matching-items.ts';

/** Methods to pick from: found by title, standards and by what they show, as the search of everything finds them. */
export function methodItems(methods: readonly MethodData[]): Pickable[] {
  return methods.map(({ id, title, shortTitle, group, standards, help }) => ({ id, label: title, detail: [group.replace('-', ' '), ...standards].join(', '), words: `${shortTitle} ${help.shows}` }));
}
