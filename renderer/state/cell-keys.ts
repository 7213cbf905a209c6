import type { Move } from './sheet-grid.ts';

export interface CellKey {
  key: string;
  code: string;
  altKey: boolean;
  ctrlKey: boolean;
  metaKey: boolean;
  shiftKey: boolean;
}

export interface CellMood {
  /** The caret is at work inside the text: left and right belong to it. */
  editing: boolean;
  empty: boolean;
  /** The field has values to step through. */
  steps: boolean;
  /** The text in the cell came from stepping, so ↑ and ↓ go on stepping. */
  stepping: boolean;
}

export type CellAction =
  | { kind: 'go'; move: Move }
  | { kind: 'step'; direction: 1 | -1 }
  | { kind: 'restore' }
  | { kind: 'edit' }
  | { kind: 'void-row' }
  | { kind: 'remark-row' };

/**
 * What a key does in a cell of the bench sheet, or `null` when it is left to the field.
 * The number pad alone suffices: digits, Enter, + and − to step, * and / to go right and left.
 */
export function cellAction(pressed: CellKey, mood: CellMood): CellAction | null {
  const command = pressed.ctrlKey || pressed.metaKey;
  if (command && pressed.key === 'Delete') return { kind: 'void-row' };
  if (command && pressed.key.toLowerCase() === 'm') return { kind: 'remark-row' };
  if (command) return null;

  switch (pressed.code) {
    case 'NumpadAdd':
      return mood.steps ? { kind: 'step', direction: 1 } : null;
    case 'NumpadSubtract':
      return mood.steps ? { kind: 'step', direction: -1 } : null;
    case 'NumpadMultiply':
      return { kind: 'go', move: 'right' };
    case 'NumpadDivide':
      return { kind: 'go', move: 'left' };
  }

  switch (pressed.key) {
    case 'Enter':
      return { kind: 'go', move: pressed.shiftKey ? 'up' : 'down' };
    case 'Tab':
      return { kind: 'go', move: pressed.shiftKey ? 'previous' : 'next' };
    case 'Escape':
      return { kind: 'restore' };
    case 'F2':
      return { kind: 'edit' };
    case 'ArrowUp':
    case 'ArrowDown': {
      const up = pressed.key === 'ArrowUp';
      if (mood.steps && (pressed.altKey || mood.empty || mood.stepping)) return { kind: 'step', direction: up ? 1 : -1 };
      if (pressed.altKey || mood.editing) return null;
      return { kind: 'go', move: up ? 'up' : 'down' };
    }
    case 'ArrowLeft':
    case 'ArrowRight':
      if (pressed.altKey || pressed.shiftKey || mood.editing) return null;
      return { kind: 'go', move: pressed.key === 'ArrowLeft' ? 'left' : 'right' };
    default:
      return null;
  }
}
