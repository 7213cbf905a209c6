import type { BenchExample } from './bench-example.ts';

export const example: BenchExample = {
  method: 'tone-value',
  conditions: {},
  rows: [
    { nominalPct: '0', density: '0' },
    { nominalPct: '50', density: '0.30' },
    { nominalPct: '100', density: '1.50' },
  ],
  limits: [{ property: 'gainPct', lower: '-3', upper: '3' }],
  expect: [
    { property: 'toneValuePct', text: '51.51 %' },
    { property: 'gainPct', text: '1.51 %' },
  ],
  source: 'Murray–Davies: 100·(1 − 10^−0.30)/(1 − 10^−1.50) = 100·0.498813/0.968377 = 51.510 %; less 50: 1.510 %.',
};
