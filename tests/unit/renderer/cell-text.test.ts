import { describe, expect, it } from 'vitest';
import { cellText } from '../../../renderer/state/cell-text.ts';
import type { Field } from '../../../shared-lib/method/method.ts';

const mode: Field = { kind: 'choice', key: 'mode', label: 'Failure', choices: [{ value: 'film-tear', label: 'film tore', shortcut: 't' }] };
const force: Field = { kind: 'number', key: 'forceN', label: 'Force', min: 0, max: 10 };

describe('what was typed in a cell', () => {
  it.each(['film-tear', 'Film tore', 'T'])('%s is read as the choice it stands for', (typed) => {
    expect(cellText(mode, typed)).toBe('film tore');
  });

  it('stays as typed when it is no choice', () => {
    expect(cellText(mode, 'x')).toBe('x');
    expect(cellText(force, '3,3')).toBe('3,3');
    expect(cellText(mode, '')).toBe('');
  });
});
