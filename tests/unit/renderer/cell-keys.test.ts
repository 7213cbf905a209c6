import { describe, expect, it } from 'vitest';
import { cellAction, type CellKey, type CellMood } from '../../../renderer/state/cell-keys.ts';

const still: CellMood = { editing: false, empty: false, steps: false, stepping: false };

function press(key: string, more: Partial<CellKey> = {}): CellKey {
  return { key, code: key, altKey: false, ctrlKey: false, metaKey: false, shiftKey: false, ...more };
}

describe('keys in a cell of the bench sheet', () => {
  it.each([
    ['Enter', {}, 'down'],
    ['Enter', { shiftKey: true }, 'up'],
    ['Tab', {}, 'next'],
    ['Tab', { shiftKey: true }, 'previous'],
    ['ArrowUp', {}, 'up'],
    ['ArrowLeft', {}, 'left'],
    ['*', { code: 'NumpadMultiply' }, 'right'],
    ['/', { code: 'NumpadDivide' }, 'left'],
  ] as const)('%s %o leads %s', (key, more, move) => {
    expect(cellAction(press(key, more), still)).toEqual({ kind: 'go', move });
  });

  it('leaves left and right to the caret while the text is edited', () => {
    expect(cellAction(press('ArrowLeft'), { ...still, editing: true })).toBeNull();
    expect(cellAction(press('ArrowRight'), { ...still, editing: true })).toBeNull();
  });

  it('enters and goes on with Enter while the text is edited', () => {
    expect(cellAction(press('Enter'), { ...still, editing: true })).toEqual({ kind: 'go', move: 'down' });
  });

  it('steps with the arrows only in an empty cell, a stepped one or with Alt', () => {
    const steps = { ...still, steps: true };
    expect(cellAction(press('ArrowUp'), steps)).toEqual({ kind: 'go', move: 'up' });
    expect(cellAction(press('ArrowUp'), { ...steps, empty: true })).toEqual({ kind: 'step', direction: 1 });
    expect(cellAction(press('ArrowDown'), { ...steps, stepping: true, editing: true })).toEqual({ kind: 'step', direction: -1 });
    expect(cellAction(press('ArrowDown', { altKey: true }), steps)).toEqual({ kind: 'step', direction: -1 });
  });

  it('steps with the number pad, and leaves + and − to a field without steps', () => {
    expect(cellAction(press('+', { code: 'NumpadAdd' }), { ...still, steps: true })).toEqual({ kind: 'step', direction: 1 });
    expect(cellAction(press('-', { code: 'NumpadSubtract' }), still)).toBeNull();
  });

  it('leaves digits and the clipboard to the field', () => {
    expect(cellAction(press('4', { code: 'Numpad4' }), still)).toBeNull();
    expect(cellAction(press('v', { ctrlKey: true }), still)).toBeNull();
  });
});
