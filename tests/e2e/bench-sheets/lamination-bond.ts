import type { BenchExample } from './bench-example.ts';

export const example: BenchExample = {
  method: 'lamination-bond',
  conditions: { speedMmPerMin: '100', geometry: 't', temperatureC: '23' },
  rows: [
    { forceN: '2.40', mode: 'a' },
    { forceN: '2.60', mode: 'a' },
    { forceN: '2.50', mode: 'c' },
    { forceN: '2.70', mode: 'a' },
    { trace: { csv: ['displacement mm,force N', ...Array.from({ length: 101 }, (_, point) => `${point},${point === 0 ? 0 : 2.55}`)].join('\n') }, mode: 's' },
  ],
  limits: [{ property: 'mean', lower: '2.5' }],
  expect: [
    { property: 'mean', text: '2.55 N/15 mm', interval: '95 % interval 2.41 to 2.69' },
    { property: 'minimum', text: '2.4 N/15 mm' },
  ],
  verdict: [{ property: 'mean', word: 'undecided' }],
  source:
    'On 15 mm the strength in N/15 mm is the force in N; the trace runs level at 2.55 N. Mean (2.40 + 2.60 + 2.50 + 2.70 + 2.55)/5 = 2.55, ' +
    'standard deviation √(0.05/4) = 0.1118, t 2.7764: ± 2.7764·0.1118/√5 = 0.1388.',
};
