import type { BenchExample } from './bench-example.ts';

export const example: BenchExample = {
  method: 'light-exposure',
  conditions: { irradianceWPerM2: '50', readAt: '20 40 60 80 100 120 160' },
  // The colour is typed once and carried down.
  rows: [
    { colour: 'yellow', exposure: '0', density: '1.50' },
    { exposure: '20', density: '1.37' },
    { exposure: '40', density: '1.28' },
    { exposure: '60', density: '1.18' },
    { exposure: '80', density: '1.09' },
    { exposure: '100', density: '1.00' },
    { exposure: '120', density: '0.93' },
    { colour: 'cyan', exposure: '0', density: '1.40' },
    { exposure: '120', density: '1.33' },
  ],
  limits: [{ property: 'exposureToLimit', lower: '100' }],
  expect: [
    { property: 'exposureToLimit', text: '88.8 h', interval: '95 % interval 86.8 to 90.9' },
    { property: 'retentionPct', text: '62 %' },
  ],
  verdict: [{ property: 'exposureToLimit', word: 'falls short' }],
  flags: ['Fades first: yellow', 'cyan has not come to its endpoint and may still do so before yellow'],
  source:
    'Retention at 120 h: 100·0.93/1.50 = 62 %, of cyan 95 %. SciPy curve_fit of e^(−kH) to D/D0 of yellow: k 0.0040154, ln(1/0.7)/k = 88.83 h, profile of the sum of ' +
    'squares 86.84 to 90.89. AICc of zero order is 14.4 higher, of the stretched exponential 8.7: both are ruled out.',
};
