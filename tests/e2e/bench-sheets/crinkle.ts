import type { BenchExample } from './bench-example.ts';

export const example: BenchExample = {
  method: 'crinkle',
  conditions: { flexes: '10', observer: 'Imke Rasmund' },
  rows: [
    { label: 'red', grade: '5', removedPct: '0' },
    { label: 'red', grade: '4', removedPct: '1' },
    { label: 'white', grade: '4', removedPct: '2' },
  ],
  limits: [{ property: 'grade', lower: '4' }],
  expect: [
    { property: 'grade', text: '4', interval: 'range 4 to 5' },
    { property: 'removedPct', text: '1.0 %', interval: '95 % interval 0.0 to 3.5' },
  ],
  verdict: [{ property: 'grade', word: 'meets' }],
  source: 'Median of 4, 4, 5. Percents 0, 1, 2: mean 1, s = 1, 4.30265/√3 = 2.484; the lower end stops at 0.',
};
