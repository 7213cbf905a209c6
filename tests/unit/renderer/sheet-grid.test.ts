import { describe, expect, it } from 'vitest';
import { cellAfter, nextRowId } from '../../../renderer/state/sheet-grid.ts';

const rows = ['r1', 'r3', 'r4'];
const keys = ['wets', 'retracts'];

describe('moving over the bench sheet', () => {
  it.each([
    ['r1', 'wets', 'down', { row: 'r3', key: 'wets' }],
    ['r4', 'wets', 'down', 'new-row'],
    ['r1', 'wets', 'up', null],
    ['r1', 'retracts', 'right', null],
    ['r1', 'retracts', 'next', { row: 'r3', key: 'wets' }],
    ['r3', 'wets', 'previous', { row: 'r1', key: 'retracts' }],
    ['r4', 'retracts', 'next', null],
    ['r2', 'wets', 'down', null],
  ] as const)('from %s %s %s', (row, key, move, target) => {
    expect(cellAfter(rows, keys, { row, key }, move)).toEqual(target);
  });

  it('never gives a new row the id of one that there was', () => {
    expect(nextRowId(['r1', 'r12', 'r3'])).toBe('r13');
    expect(nextRowId([])).toBe('r1');
  });
});
