import type { BenchExample } from './bench-example.ts';

export const example: BenchExample = {
  method: 'bond-build',
  conditions: { requiredNPer15mm: '2.0', storageTemperatureC: '23' },
  rows: [
    { hours: '1', forceN: '0.62', mode: 'a' },
    { hours: '4', forceN: '1.05', mode: 'a' },
    { hours: '8', forceN: '1.50', mode: 'a' },
    { hours: '24', forceN: '2.52', mode: 'a' },
    { hours: '48', forceN: '2.86', mode: 'a' },
    { hours: '96', forceN: '2.90', mode: 'a' },
  ],
  limits: [{ property: 'hoursUntilRequired', upper: '24' }],
  expect: [
    { property: 'plateau', text: '2.924 N/15 mm', interval: '95 % interval 2.846 to 3.002' },
    { property: 'hoursUntilRequired', text: '13.6 h', interval: '95 % interval 12.6 to 14.8' },
    { property: 'initial', text: '0.43 N/15 mm', interval: '95 % interval 0.32 to 0.53' },
    { property: 'rate', text: '0.0729 1/h', interval: '95 % interval 0.0630 to 0.0828' },
  ],
  verdict: [{ property: 'hoursUntilRequired', word: 'meets' }],
  source:
    'SciPy curve_fit of a + (b − a)(1 − e^(−kt)): 0.4260 ± 0.0326, 2.9242 ± 0.0245, 0.07290 ± 0.00310 (standard errors, t 3.1824). ' +
    '2.0 is reached at −ln(1 − (2 − 0.4260)/(2.9242 − 0.4260))/0.0729 = 13.64 h; its profile of the sum of squares ends at 12.55 and 14.82. ' +
    'Six readings are too few for the AICc of the model with a lag.',
};
