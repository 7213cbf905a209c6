import type { BenchExample } from './bench-example.ts';

export const example: BenchExample = {
  method: 'odour-intensity',
  conditions: { seed: '9' },
  // From 9 follows which jar came first: print, control, print, control, print, control.
  rows: [['2', '0'], ['0', '2.5'], ['2', '0.5'], ['0', '3'], ['1.5', '0'], ['0', '2']].map(([first, second], index) => ({ assessor: `P${index + 1}`, first: first!, second: second! })),
  expect: [
    { property: 'Smell of the print, median', text: '2', interval: '95 % interval 1.50 to 3.00' },
    { property: 'Smell of the control, median', text: '0', interval: '95 % interval 0.00 to 0.50' },
  ],
  source: 'Arithmetic: grades of the print 1.5 2 2 2 2.5 3, median 2; of six the extremes bracket the median in 96.9 % (1 − 2/2⁶).',
};
