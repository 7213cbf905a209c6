import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readCsvNumber } from '../../../electron/exchange/csv-number.ts';

describe('a number of a CSV cell', () => {
  it('is the double nearest to what is written, whatever the decimal mark', () => {
    const digits = (most: number) => fc.string({ unit: fc.constantFrom(...'0123456789'), maxLength: most });
    fc.assert(
      fc.property(fc.constantFrom('', '-', '+'), digits(18), digits(18), (sign, whole, decimals) => {
        fc.pre(whole !== '' || decimals !== '');
        const text = `${sign}${whole}.${decimals}`;
        expect(readCsvNumber(text, '.')).toBe(Number(text));
        expect(readCsvNumber(text.replace('.', ','), ',')).toBe(Number(text));
      }),
      { numRuns: 2000 },
    );
  });

  it.each([
    ['1.234,5', ',', 1234.5],
    ['1,234.5', '.', 1234.5],
    ["1'234.5", '.', 1234.5],
    ['\u22121,5', ',', -1.5],
    [' 7 ', '.', 7],
    ['1e3', '.', 1000],
    ['-0', '.', -0],
    ['1.2.3', '.', null],
    ['1,5', '.', null],
    ['', '.', null],
    ['-', '.', null],
    ['.', '.', null],
    ['7 N', '.', null],
  ] as const)('%j with decimal %s', (cell, decimal, value) => {
    expect(readCsvNumber(cell, decimal)).toBe(value);
  });
});
