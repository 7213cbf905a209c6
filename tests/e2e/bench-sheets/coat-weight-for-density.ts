import type { BenchExample } from './bench-example.ts';

export const example: BenchExample = {
  method: 'coat-weight-for-density',
  conditions: { present: '1.30', target: '1.50', coatWeightChangePct: '10' },
  rows: [
    { coatWeightGM2: '0.8', reading: '0.80' },
    { coatWeightGM2: '1.2', reading: '1.12' },
    { coatWeightGM2: '1.6', reading: '1.36' },
    { coatWeightGM2: '2.0', reading: '1.58' },
    { coatWeightGM2: '2.4', reading: '1.74' },
  ],
  expect: [
    { property: 'changePct', text: '24.2 %', interval: '95 % interval 20.1 to 28.3' },
    { property: 'targetCoatWeight', text: '1.853 g/m²', interval: '95 % interval 1.825 to 1.880' },
    { property: 'presentCoatWeight', text: '1.491 g/m²', interval: '95 % interval 1.439 to 1.544' },
    { property: 'expectedReading', text: '1.387', interval: '95 % interval 1.346 to 1.427' },
  ],
  source:
    'SciPy curve_fit of a(1 − e^(−bw)): a 2.58283, b 0.469218, residual sum of squares 0.00023 against 0.0084 of a line. ' +
    'w = −ln(1 − D/a)/b is 1.4915 at 1.30 and 1.8527 at 1.50, 24.22 % more; intervals by the delta method with t 3.1824 and the scatter of one present reading.',
};
