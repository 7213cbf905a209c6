import type { BenchExample } from './bench-example.ts';

export const example: BenchExample = {
  method: 'print-contrast',
  conditions: {},
  rows: [{ label: 'middle', solid: '1.50', tint: '0.90' }],
  expect: [{ property: 'contrastPct', text: '40 %' }],
  source: '100·(1.50 − 0.90)/1.50 = 40 %.',
};
