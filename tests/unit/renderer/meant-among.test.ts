import { describe, expect, it } from 'vitest';
import { meantAmong } from '../../../renderer/state/meant-among.ts';

const choices = ['Deep Red', 'Red', 'Red 12 · Marrowfield Foods'].map((typed) => ({ typed, detail: '' }));

describe('the choice that is meant by what was typed', () => {
  it.each([
    ['a name in full, although another that holds it stands before', 'red', 1],
    ['a part of a name', 'red 12', 2],
    ['a part of several names: the first', 're', 0],
    ['what no name holds', 'blue', -1],
    ['an emptied field', ' ', -1],
  ])('%s', (_what, typed, place) => {
    expect(meantAmong(choices, typed)).toBe(place);
  });
});
