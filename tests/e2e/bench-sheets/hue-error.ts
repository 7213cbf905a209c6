import type { BenchExample } from './bench-example.ts';

export const example: BenchExample = {
  method: 'hue-error',
  conditions: { ink: 'magenta' },
  rows: [{ label: 'middle', red: '0.15', green: '1.30', blue: '0.62' }],
  expect: [
    { property: 'hueErrorPct', text: '40.87 %' },
    { property: 'greynessPct', text: '11.54 %' },
    { property: 'efficiencyPct', text: '70.38 %' },
  ],
  source: '(0.62 − 0.15)/(1.30 − 0.15) = 40.870 %; 0.15/1.30 = 11.538 %; 1 − 0.77/2.60 = 70.385 %.',
};
