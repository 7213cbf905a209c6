import { describe, expect, it } from 'vitest';
import { readInUnit } from '../../../shared-lib/quantity/read-in-unit.ts';
import { unbroken } from '../../../shared-lib/quantity/unbroken.ts';

describe('a number and its unit', () => {
  it.each([
    ['jaws up to 150 °C; Cold: −18 °C', 'jaws up to 150~°C; Cold: −18~°C'],
    ['Residual solvents, total ≤ 10 mg/m² (common practice)', 'Residual solvents, total ≤~10~mg/m² (common practice)'],
    ['Weakest specimen ≥ 2.5 N/15 mm', 'Weakest specimen ≥~2.5~N/15~mm'],
    ['after 24 h at 5 °C', 'after 24~h at 5~°C'],
    ['Print retained ≥ 90 % (customer)', 'Print retained ≥~90~% (customer)'],
    ['3 specimens, 10 hours, 4 Nordic markets', '3 specimens, 10 hours, 4 Nordic markets'],
  ])('%s stays on one line', (text, expected) => {
    expect(unbroken(text).replaceAll('\u00a0', '~')).toBe(expected);
  });

  it('is read with its own unit and without, and with no other', () => {
    expect(readInUnit('40 mN/m', 'mN/m')).toEqual({ value: 40 });
    expect(readInUnit(' 40,5mN/m ', 'mN/m')).toEqual({ value: 40.5 });
    expect(readInUnit('40', 'mN/m')).toEqual({ value: 40 });
    expect(readInUnit('40 dyn/cm', 'mN/m')).toHaveProperty('problem');
    expect(readInUnit('40', '')).toEqual({ value: 40 });
  });
});
