import type { BenchExample } from './bench-example.ts';

export const example: BenchExample = {
  method: 'scratch',
  conditions: { tool: 's', tipRadiusMm: '0,5' },
  rows: [
    { label: 'along', grade: '2', heldN: '3', scratchedN: '4' },
    { label: 'across', grade: '3', heldN: '3', scratchedN: '4' },
    { label: 'varnish', heldN: '3', scratchedN: '4' },
  ],
  limits: [{ property: 'load', lower: '2.5' }],
  expect: [
    { property: 'grade', text: '2', interval: 'range 2 to 3' },
    { property: 'load', text: 'between 3 and 4 N' },
    { property: 'weakest', text: 'between 3 and 4 N' },
  ],
  verdict: [{ property: 'load', word: 'meets' }],
  source: 'Three specimens that first scratch between 3 and 4 N: nothing is known but this bracket. Of the grades 2 and 3 the worse is the median.',
};
