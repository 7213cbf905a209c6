import type { BenchExample } from './bench-example.ts';

export const example: BenchExample = {
  method: 'opacity',
  conditions: { whiteBackingY: '89' },
  rows: [{ label: 'middle', overBlackY: '66.096', overWhiteY: '89.355' }],
  expect: [
    { property: 'contrastRatioPct', text: '73.97 %' },
    { property: 't425Pct', text: '73.97 %' },
    { property: 'd2805Pct', text: '78.35 %' },
    { property: 'iso2471Pct', text: '73.44 %' },
  ],
  source:
    'A layer of R∞ 0.90 and SX 2 by Kubelka–Munk: R0 0.66096, R over 0.89 0.89355, over 0.80 0.84364, so 66.096/89.355 = 73.970 %, ' +
    '66.096/84.364 = 78.346 %, 66.096/90 = 73.440 %.',
};
