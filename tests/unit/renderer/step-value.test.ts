import { describe, expect, it } from 'vitest';
import { stepValue } from '../../../renderer/state/step-value.ts';

const steps = [30, 32, 34, 36, 38];

describe('stepping through the values of a field', () => {
  it('starts an empty cell at the value above, and without one in the middle', () => {
    expect(stepValue(steps, '', '36', 1)).toBe('36');
    expect(stepValue(steps, '', '36', -1)).toBe('36');
    expect(stepValue(steps, '', '', 1)).toBe('34');
  });

  it('goes to the next step, also from between two steps and with a decimal comma', () => {
    expect(stepValue(steps, '34', '', 1)).toBe('36');
    expect(stepValue(steps, '34', '', -1)).toBe('32');
    expect(stepValue(steps, '34,5', '', 1)).toBe('36');
    expect(stepValue(steps, '34,5', '', -1)).toBe('34');
  });

  it('stays at the ends', () => {
    expect(stepValue(steps, '38', '', 1)).toBe('38');
    expect(stepValue(steps, '30', '', -1)).toBe('30');
  });
});
