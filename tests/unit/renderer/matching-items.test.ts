import { describe, expect, it } from 'vitest';
import { allMethods } from '../../../shared-lib/registry/methods.ts';
import { matchingItems } from '../../../renderer/state/matching-items.ts';
import { methodItems } from '../../../renderer/state/method-items.ts';
import { personByKey } from '../../../renderer/state/person-by-key.ts';

const items = [
  { id: 'a', label: 'Lamination bond', detail: 'ASTM F904' },
  { id: 'b', label: 'Bond build-up' },
  { id: 'c', label: 'Test fluids', detail: 'ASTM D2578' },
];

describe('picking by typing', () => {
  it('takes items that hold every word, those that begin with the text first', () => {
    expect(matchingItems(items, 'bond').map((item) => item.id)).toEqual(['b', 'a']);
    expect(matchingItems(items, 'astm f').map((item) => item.id)).toEqual(['a', 'c']);
    expect(matchingItems(items, 'astm 904').map((item) => item.id)).toEqual(['a']);
    expect(matchingItems(items, '')).toHaveLength(3);
  });
});

it('puts those that are found by words alone last', () => {
  const [said, shown] = [{ id: 'a', label: 'Trouser tear', words: 'peels plies' }, { id: 'b', label: 'Blister', detail: 'peel' }];
  expect(matchingItems([said, shown], 'peel').map(({ id }) => id)).toEqual(['b', 'a']);
});

describe('a method', () => {
  it('is found by what it shows and by its standards', () => {
    const found = (typed: string) => matchingItems(methodItems(allMethods), typed).map(({ id }) => id);
    // Nothing in the title of a lamination bond says that plies are peeled.
    expect(found('peel')).toContain('lamination-bond');
    expect(found('F904')).toContain('lamination-bond');
  });
});

describe('taking the bench by one key', () => {
  const people = ['IR', 'TV', 'AQ', 'TB'].map((initials, index) => ({ personId: String(index), name: initials, initials, role: '' }));

  it('takes the number in the list or a letter that only one person has', () => {
    expect(personByKey(people, '2')?.initials).toBe('TV');
    expect(personByKey(people, 'a')?.initials).toBe('AQ');
  });

  it('takes nobody for a letter that two people share, or a key that is none', () => {
    expect(personByKey(people, 't')).toBeNull();
    expect(personByKey(people, '9')).toBeNull();
    expect(personByKey(people, 'Shift')).toBeNull();
  });
});
