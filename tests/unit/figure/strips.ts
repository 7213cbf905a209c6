import type { StripSpec } from '../../../shared-lib/figure/strip.ts';

const plain: StripSpec = { unit: 'mN/m', readings: [], value: null, low: null, high: null, bound: 'exact', lowerLimit: null, upperLimit: null, domain: null, label: 'no readings' };

function strip(part: Partial<StripSpec>): StripSpec {
  return { ...plain, ...part };
}

const values = (...list: number[]) => list.map((value) => ({ value }));

/** Invented strips that between them use every feature. */
export const allStrips: Record<string, StripSpec> = {
  'meets a lower limit': strip({ readings: values(39.2, 40.1, 40.4, 40.4, 41, 41.3), value: 40.4, low: 39.6, high: 41.2, lowerLimit: 38 }),
  'falls short': strip({ readings: values(35.2, 36, 36.4, 36.4, 36.4, 37), value: 36.2, low: 35.5, high: 36.9, lowerLimit: 38 }),
  undecided: strip({ readings: values(37.1, 38, 38.4, 39.2), value: 38.2, low: 37, high: 39.3, lowerLimit: 38 }),
  'upper limit, a doubtful reading': strip({ readings: [...values(2.1, 2.4, 2.2, 2.5), { value: 4.6, doubtful: true }], value: 2.7, low: 1.6, high: 3.9, upperLimit: 5 }),
  'within two limits': strip({ readings: values(0.31, 0.33, 0.34, 0.36), value: 0.335, low: 0.31, high: 0.36, lowerLimit: 0.25, upperLimit: 0.45 }),
  'torn specimens': strip({ readings: [...values(2.6, 3.1), { value: 3.3, open: 'up' }, { value: 3.5, open: 'up' }, { value: 3.5, open: 'up' }], value: 3.4, low: 2.9, high: 4.1, lowerLimit: 2.5 }),
  'at least (all torn)': strip({ readings: [{ value: 3.1, open: 'up' }, { value: 3.3, open: 'up' }, { value: 3.6, open: 'up' }], value: 3.1, bound: 'at-least', lowerLimit: 2.5 }),
  'at most (below detection)': strip({ readings: [{ value: 0.5, open: 'down' }, { value: 0.5, open: 'down' }], value: 0.5, bound: 'at-most', upperLimit: 2 }),
  brackets: strip({ readings: [{ value: 37, low: 36, high: 38 }, { value: 39, low: 38, high: 40 }, { value: 39, low: 38, high: 40 }, { value: 41, low: 40, high: 42 }], value: 39, low: 37.6, high: 40.4, lowerLimit: 38 }),
  'between (brackets only)': strip({ readings: [{ value: 39, low: 38, high: 40 }, { value: 39, low: 38, high: 40 }], value: 39, low: 38, high: 40, bound: 'between', lowerLimit: 36 }),
  'no limit': strip({ readings: values(60.1, 61.2, 61.8, 62.9), value: 61.5, low: 60, high: 63 }),
  'one reading': strip({ readings: values(40), value: 40, lowerLimit: 38 }),
  'one reading, no limit': strip({ readings: values(40), value: 40 }),
  'all equal': strip({ readings: values(38, 38, 38, 38, 38, 38, 38, 38), value: 38, low: 38, high: 38, lowerLimit: 36 }),
  'many readings': strip({ readings: Array.from({ length: 150 }, (_, i) => ({ value: 40 + 2 * Math.sin(i * 2.3) * Math.cos(i) })), value: 40, low: 39.8, high: 40.2, lowerLimit: 37 }),
  'huge range': strip({ readings: values(1e-12, 3, 1e9), value: 3e8, low: -1e8, high: 9e8, upperLimit: 1e6 }),
  'largest numbers': strip({ readings: values(-Number.MAX_VALUE, Number.MAX_VALUE), value: 0, low: -Number.MAX_VALUE, high: Number.MAX_VALUE }),
  'outside a common scale': strip({ readings: values(10, 40, 90), value: 47, low: 5, high: 95, lowerLimit: 20, domain: [30, 60] }),
  'no readings': plain,
};
