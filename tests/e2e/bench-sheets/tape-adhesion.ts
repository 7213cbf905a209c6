import type { BenchExample } from './bench-example.ts';

export const example: BenchExample = {
  method: 'tape-adhesion',
  conditions: { moment: 'b', hoursSincePrinting: '2', tape: '25 mm, lot 7, good until 2026-12', cuts: '1', dwellS: '90' },
  rows: [
    { label: 'cyan solid', squaresRemoved: '3', parted: 'f' },
    { label: 'white over cyan', squaresRemoved: '5', parted: 'b' },
  ],
  limits: [
    { property: 'gradeD3359', lower: '4' },
    { property: 'retainedPct', lower: '90' },
  ],
  expect: [
    { property: 'gradeD3359', text: '3B', interval: 'range 3 to 4' },
    { property: 'gradeISO2409', text: '1', interval: 'range 1 to 1' },
    { property: 'retainedPct', text: '96.0 %', interval: '95 % interval 92.3 to 98.3' },
  ],
  verdict: [
    { property: 'gradeD3359', word: 'undecided' },
    { property: 'retainedPct', word: 'meets' },
  ],
  flags: ['Specimen 2 lost exactly 5 %, the end of a band'],
  source:
    '11 × 11 cuts make 100 squares of 1 %. 3 % is 4B and class 1, 5 % is 3B (4B is for less than 5 %) and class 1 (not greater than 5 %): ASTM D3359, ISO 2409. ' +
    '8 of 200 squares: Clopper–Pearson 1.74 to 7.73 %, from beta quantiles of an independent library.',
};
