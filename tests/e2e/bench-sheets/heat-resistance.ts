import type { BenchExample } from './bench-example.ts';

export const example: BenchExample = {
  method: 'heat-resistance',
  conditions: { failure: 'ink on the foil', facing: 'a', pressureKPa: '200', dwellS: '1' },
  rows: [
    { celsius: '120', tested: '5', failed: '0' },
    { celsius: '130', failed: '1' },
    { celsius: '140', failed: '3' },
    { celsius: '150', failed: '5' },
  ],
  limits: [
    { property: 't05', lower: '120' },
    { property: 't50', lower: '125' },
  ],
  expect: [
    { property: 't50', text: '137.0 °C', interval: '95 % interval 131.0 to 143.3' },
    { property: 't05', text: '126 °C', interval: '95 % interval 106 to 134' },
  ],
  verdict: [
    { property: 't05', word: 'undecided' },
    { property: 't50', word: 'meets' },
  ],
  source: 'The binomial likelihood of the four steps climbed by golden section in another language, ends where it falls by 3.841459/2: 137.041 (131.002 to 143.270), 125.584 (106.391 to 133.601).',
};
