import { afterAll, describe, expect, it } from 'vitest';
import * as d from '../../../shared-lib/statistics/distributions.ts';
import quantiles from './distribution-quantiles.json';
import tails from './distribution-tails.json';
import { lre, printDigits } from './lre.ts';

type Name = 'norm' | 't' | 'chi2' | 'f';

const quantile: Record<Name, (p: number, ...args: number[]) => number> = {
  norm: (p) => d.normalQuantile(p),
  t: (p, df) => d.studentTQuantile(p, df!),
  chi2: (p, df) => d.chiSquareQuantile(p, df!),
  f: (p, a, b) => d.fQuantile(p, a!, b!),
};

const upperTail: Record<Name, (x: number, ...args: number[]) => number> = {
  norm: (x) => d.normalUpperTail(x),
  t: (x, df) => d.studentTUpperTail(x, df!),
  chi2: (x, df) => d.chiSquareUpperTail(x, df!),
  f: (x, a, b) => d.fUpperTail(x, a!, b!),
};

const lowerTail = { norm: d.normalCdf, t: (x: number, df: number) => d.studentTCdf(x, df) };

// Source of both tables: mpmath at 40 digits (see `source` in the files). 12 digits are asked for.
const DIGITS = 12;

describe('distributions against 40-digit references', () => {
  const worst: Record<string, number> = {};
  const note = (name: string, digits: number) => {
    worst[name] = Math.min(worst[name] ?? 16, digits);
    return digits;
  };
  afterAll(() => printDigits('Distributions, worst case', Object.entries(worst).map(([name, digits]) => ({ function: name, digits }))));

  it.each(['norm', 't', 'chi2', 'f'] as const)('quantiles of %s', (name) => {
    const rows = quantiles.rows.filter(({ dist }) => dist === name);
    expect(rows.length).toBeGreaterThan(5);
    for (const { args, p, q } of rows) expect(note(`${name} quantile`, lre(quantile[name](p, ...args), q)), `p = ${p}, ${args}`).toBeGreaterThan(DIGITS);
  });

  it.each(['norm', 't', 'chi2', 'f'] as const)('tails of %s, as far out as they go', (name) => {
    const rows = tails.rows.filter(({ dist }) => dist === name);
    expect(rows.length).toBeGreaterThan(3);
    for (const { args, x, p, sf } of rows) {
      if (sf !== undefined) {
        expect(note(`${name} upper tail`, lre(upperTail[name](x, ...args), sf)), `x = ${x}, ${args}`).toBeGreaterThan(DIGITS);
      } else {
        // Symmetric distributions are tabulated below zero: the upper tail at −x is the same number.
        expect(note(`${name} lower tail`, lre(lowerTail[name as 'norm' | 't'](x, args[0] ?? 0), p)), `x = ${x}, ${args}`).toBeGreaterThan(DIGITS);
        expect(note(`${name} upper tail`, lre(upperTail[name](-x, ...args), p)), `x = ${-x}, ${args}`).toBeGreaterThan(DIGITS);
      }
    }
  });

  it('gives the 1/2 and 97.5 % points of the handbook tables', () => {
    // Table values common to statistics handbooks: z.975 = 1.95996, t.975(4) = 2.77645, chi2.95(1) = 3.84146, F.95(2, 10) = 4.10282.
    expect(d.normalQuantile(0.975)).toBeCloseTo(1.95996, 5);
    expect(d.studentTQuantile(0.975, 4)).toBeCloseTo(2.77645, 5);
    expect(d.chiSquareQuantile(0.95, 1)).toBeCloseTo(3.84146, 5);
    expect(d.fQuantile(0.95, 2, 10)).toBeCloseTo(4.10282, 5);
    expect(d.normalLogDensity(0)).toBeCloseTo(Math.log(0.3989422804014327), 14);
  });
});
