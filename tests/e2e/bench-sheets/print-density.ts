import type { BenchExample } from './bench-example.ts';

export const example: BenchExample = {
  method: 'print-density',
  conditions: {},
  rows: [
    { label: 'operator side', cyan: '1.40' },
    { label: 'middle', cyan: '1.42' },
    { label: 'drive side', cyan: '1.44' },
  ],
  limits: [{ property: 'cyan', lower: '1.30', upper: '1.50' }],
  expect: [{ property: 'cyan', text: '1.420 minus paper', interval: '95 % interval 1.370 to 1.470' }],
  verdict: [{ property: 'cyan', word: 'meets' }],
  source: 'Mean 1.42, standard deviation 0.02, t 4.3027: ± 4.3027·0.02/√3 = 0.0497.',
};
