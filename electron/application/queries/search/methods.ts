import { allMethods } from '../../../../shared-lib/registry/methods.ts';
import { listInHouseMethods } from '../in-house-methods.ts';
import type { SearchKind } from './search-kind.ts';

/** Methods, the built-in ones and the shop's own, by title, what they show and the standards that they follow. */
export const methods: SearchKind = {
  title: 'Methods',
  find({ store }, words, limit) {
    const own = listInHouseMethods(store).map(({ methodId, title, retired }) => ({ id: methodId, title, detail: retired ? 'in-house · retired' : 'in-house', text: `${title} in-house` }));
    const builtIn = allMethods.map(({ id, title, shortTitle, standards, help }) => ({
      id,
      title,
      detail: standards.join(', '),
      text: `${title} ${shortTitle} ${standards.join(' ')} ${help.shows}`,
    }));
    const wanted = words.map((word) => word.toLowerCase());
    const found = [...own, ...builtIn].filter(({ text }) => wanted.every((word) => text.toLowerCase().includes(word)));
    return { total: found.length, many: false, hits: found.slice(0, limit).map(({ id, title, detail }) => ({ key: id, title, detail, screen: 'methods' as const, id })) };
  },
};
