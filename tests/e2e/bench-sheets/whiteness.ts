import type { BenchExample } from './bench-example.ts';

export const example: BenchExample = {
  method: 'whiteness',
  conditions: {},
  rows: [{ label: 'middle', X: '88', Y: '92', Z: '96' }],
  expect: [
    { property: 'whiteness', text: '84' },
    { property: 'tint', text: '−3.02' },
    { property: 'yellownessE313', text: '4.493' },
  ],
  source:
    'D65, 10°: x 88/276 = 0.318841, y 92/276 = 0.333333; 92 + 800(0.3138 − x) + 1700(0.3310 − y) = 84.001; ' +
    '900(0.3138 − x) − 650(0.3310 − y) = −3.0199; 100(1.3013·88 − 1.1498·96)/92 = 4.4930.',
};
