import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readDecimal } from '../../../shared-lib/quantity/decimal.ts';

describe('reading a typed number', () => {
  it.each([
    ['38,5', 38.5],
    ['38.5', 38.5],
    [' 42 ', 42],
    ['1 234.5', 1234.5],
    ['1\u202f234,5', 1234.5],
    ['1.234,5', 1234.5],
    ['1,234.5', 1234.5],
    ['1,234,567', 1234567],
    ['1.234.567', 1234567],
    ['1234,567', 1234.567],
    ['0,125', 0.125],
    ['−3', -3],
    ['-0,125', -0.125],
    ['+7', 7],
    [',5', 0.5],
    ['1e-3', 0.001],
    ['1,5E3', 1500],
    ['2e−2', 0.02],
  ])('%s', (typed, value) => {
    expect(readDecimal(typed)).toEqual({ value });
  });

  it.each([
    ['', /nothing was typed/i],
    ['   ', /nothing was typed/i],
    ['1,234', /1\.234 or 1234/],
    ['-12,345', /−12\.345 or −12345/],
    ['38 mN/m', /38, without the unit/],
    ['38,5N', /38,5, without the unit/],
    ['12 %', /12, without the unit/],
    ['torn', /not a number/],
    ['NaN', /not a number/],
    ['Infinity', /not a number/],
    ['--3', /not a number/],
    ['12/5', /goes on after the number 12/],
    ['1.2.3', /do not make one number/],
    ['12 34', /do not make one number/],
    ['5.', /do not make one number/],
    ['1e400', /too large/],
    ['1e-400', /too small/],
  ])('refuses %j', (typed, sentence) => {
    const read = readDecimal(typed);
    expect(read).not.toHaveProperty('value');
    expect((read as { problem: string }).problem).toMatch(sentence);
  });

  it('says both readings of a number below zero with their sign', () => {
    expect(readDecimal('-1,234')).toEqual({ problem: expect.stringContaining('−1.234 or −1234') });
  });

  it('reads back every number as the language writes it, with either decimal mark', () => {
    fc.assert(fc.property(fc.double({ noNaN: true, noDefaultInfinity: true }), (number) => {
      const typed = String(number);
      expect(readDecimal(typed)).toEqual({ value: number === 0 ? 0 : number });
      const withComma = readDecimal(typed.replace('.', ','));
      if ('value' in withComma) expect(withComma.value).toBe(number === 0 ? 0 : number);
      else expect(typed).toMatch(/^-?[1-9]\d{0,2}\.\d{3}(e|$)/);
    }));
  });

  it('never throws and never gives a number that is not finite', () => {
    fc.assert(fc.property(fc.string(), (typed) => {
      const read = readDecimal(typed);
      if ('value' in read) expect(Number.isFinite(read.value)).toBe(true);
      else expect(read.problem).toMatch(/\.$/);
    }));
  });
});
