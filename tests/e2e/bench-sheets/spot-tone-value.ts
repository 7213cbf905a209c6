import type { BenchExample } from './bench-example.ts';

export const example: BenchExample = {
  method: 'spot-tone-value',
  conditions: {},
  rows: [
    { nominalPct: '0', X: '84', Y: '87', Z: '70' },
    { nominalPct: '50', X: '45', Y: '42', Z: '32' },
    { nominalPct: '100', X: '20', Y: '12', Z: '8' },
  ],
  expect: [
    { property: 'toneValuePct', text: '45.74 %' },
    { property: 'gainPct', text: '−4.263 %' },
  ],
  source:
    'ISO 20654 with white 96.42 / 100 / 82.49: cube roots of X/Xn, Y/Yn, Z/Zn of film, tint and solid; ' +
    '100·√(Σ(tint − film)²/Σ(solid − film)²) = 45.737 %; less 50: −4.263 %.',
};
