import { describe, expect, it } from 'vitest';
import { deltaE2000 } from '../../../shared-lib/colour/delta-e-2000.ts';
import { deltaE94 } from '../../../shared-lib/colour/delta-e-94.ts';
import { deltaEab } from '../../../shared-lib/colour/delta-e-ab.ts';
import { deltaECmc } from '../../../shared-lib/colour/delta-e-cmc.ts';
import type { Lab } from '../../../shared-lib/colour/lab.ts';

/** Sharma, Wu & Dalal (2005), Color Res. Appl. 30, 21–30, Table 1, by pair number; given to four decimals. */
const sharma: [number, Lab, Lab, number][] = [
  [1, [50, 2.6772, -79.7751], [50, 0, -82.7485], 2.0425],
  [2, [50, 3.1571, -77.2803], [50, 0, -82.7485], 2.8615],
  [4, [50, -1.3802, -84.2814], [50, 0, -82.7485], 1.0],
  [5, [50, -1.1848, -84.8006], [50, 0, -82.7485], 1.0],
  [7, [50, 0, 0], [50, -1, 2], 2.3669],
  [8, [50, -1, 2], [50, 0, 0], 2.3669],
  [10, [50, 2.49, -0.001], [50, -2.49, 0.001], 7.1792],
  [11, [50, 2.49, -0.001], [50, -2.49, 0.0011], 7.2195],
  [13, [50, -0.001, 2.49], [50, 0.0009, -2.49], 4.8045],
  [14, [50, -0.001, 2.49], [50, 0.001, -2.49], 4.8045],
  [16, [50, 2.5, 0], [50, 0, -2.5], 4.3065],
  [17, [50, 2.5, 0], [73, 25, -18], 27.1492],
  [19, [50, 2.5, 0], [56, -27, -3], 31.903],
  [20, [50, 2.5, 0], [58, 24, 15], 19.4535],
  [22, [50, 2.5, 0], [50, 3.2972, 0], 1.0],
  [23, [50, 2.5, 0], [50, 1.8634, 0.5757], 1.0],
  [25, [60.2574, -34.0099, 36.2677], [60.4626, -34.1751, 39.4387], 1.2644],
  [26, [63.0109, -31.0961, -5.8663], [62.8187, -29.7946, -4.0864], 1.263],
  [28, [35.0831, -44.1164, 3.7933], [35.0232, -40.0716, 1.5901], 1.8645],
  [29, [22.7233, 20.0904, -46.694], [23.0331, 14.973, -42.5619], 2.0373],
  [31, [90.8027, -2.0831, 1.441], [91.1528, -1.6435, 0.0447], 1.4441],
  [32, [90.9257, -0.5406, -0.9208], [88.6381, -0.8985, -0.7239], 1.5381],
  [34, [2.0776, 0.0795, -1.135], [0.9033, -0.0636, -0.5514], 0.9082],
];

describe('ΔE00 against Sharma, Wu & Dalal 2005, Table 1', () => {
  it.each(sharma)('pair %i', (_n, reference, sample, published) => {
    expect(Math.abs(deltaE2000(reference, sample) - published)).toBeLessThanOrEqual(0.00005 + 1e-9);
    expect(Math.abs(deltaE2000(sample, reference) - published)).toBeLessThanOrEqual(0.00005 + 1e-9);
  });
});

/**
 * Pairs of the python-colormath test-suite (BSD; the first two, three decimals) and of the colour-science test-suite
 * (BSD-3-Clause; the last); the first colour is the reference.
 */
const others = [
  { reference: [0.9, 16.3, -2.22], sample: [0.7, 14.2, -1.8], ab: 2.151, e94: 1.249, cmc21: 1.443, cmc11: 1.482, e00: 1.523, within: 0.0006 },
  { reference: [32.8911, -53.0107, -43.3182], sample: [77.1797, 25.5928, 17.9412], e00: 78.772, within: 0.0006 },
  {
    reference: [100, 21.57210357, 272.2281935],
    sample: [100, 74.05216981, 276.45318193],
    e94: 10.053931954553839,
    cmc21: 20.59732717,
    cmc11: 20.59732717,
    e00: 14.87906419,
    within: 1e-7,
  },
] as const;

describe('ΔE*ab, ΔE94, CMC and ΔE00 against published test pairs', () => {
  it.each(others)('$reference → $sample', (pair) => {
    const { reference, sample, within } = pair;
    const near = (actual: number, expected: number) => expect(Math.abs(actual - expected)).toBeLessThanOrEqual(within);
    near(deltaE2000(reference, sample), pair.e00);
    if ('ab' in pair) near(deltaEab(reference, sample), pair.ab);
    if ('e94' in pair) near(deltaE94(reference, sample), pair.e94);
    if ('cmc21' in pair) {
      near(deltaECmc(reference, sample, { l: 2, c: 1 }), pair.cmc21);
      near(deltaECmc(reference, sample, { l: 1, c: 1 }), pair.cmc11);
    }
  });
});
