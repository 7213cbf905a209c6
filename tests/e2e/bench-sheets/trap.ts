import type { BenchExample } from './bench-example.ts';

export const example: BenchExample = {
  method: 'trap',
  conditions: { firstInk: 'cyan', secondInk: 'magenta' },
  rows: [{ label: 'middle', first: '0.45', second: '1.35', overprint: '1.55' }],
  expect: [
    { property: 'apparentPct', text: '81.48 %' },
    { property: 'brunnerPct', text: '98.75 %' },
    { property: 'ritzPct', text: '96.36 %' },
  ],
  source:
    'Preucil (1.55 − 0.45)/1.35 = 81.481 %; Brunner (1 − 10^−1.55)/(1 − 10^−1.80) = 98.747 %; Ritz (1 − 10^−1.10)/(1 − 10^−1.35) = 96.361 %.',
};
