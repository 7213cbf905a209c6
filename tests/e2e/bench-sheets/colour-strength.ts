import type { BenchExample } from './bench-example.ts';

export const example: BenchExample = {
  method: 'colour-strength',
  conditions: { standardName: 'retained lot of January', wavelengthNm: '620', standard: '15', substrate: '85' },
  rows: [{ label: 'new lot', sample: '12' }],
  expect: [{ property: 'strengthPct', text: '134.2 %' }],
  source:
    'K/S (1 − R)²/2R: 0.12 → 3.22667, 0.15 → 2.40833, substrate 0.85 → 0.01324; 100·(3.22667 − 0.01324)/(2.40833 − 0.01324) = 134.167 %.',
};
