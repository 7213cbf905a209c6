import type { BenchExample } from './bench-example.ts';

export const example: BenchExample = {
  method: 'blocking',
  conditions: { pressedBy: 'w', faces: 'b', pressureKPa: '70', temperatureC: '50', hours: '24' },
  rows: [
    { grade: '1', loadG: '40', separated: 'y' },
    { grade: '2', loadG: '50', separated: 'y' },
    { grade: '2', loadG: '60', separated: 'y' },
  ],
  limits: [
    { property: 'grade', upper: '2' },
    { property: 'load', upper: '60' },
  ],
  expect: [
    { property: 'grade', text: '2', interval: 'range 1 to 2' },
    { property: 'load', text: '50 g', interval: '95 % interval 25 to 75' },
    { property: 'pressure', text: '49 Pa', interval: '95 % interval 25 to 73' },
    { property: 'maximum', text: '60 g' },
  ],
  verdict: [
    { property: 'grade', word: 'meets' },
    { property: 'load', word: 'undecided' },
  ],
  source: 'Mean 50 g, s = 10 g, t(0.975; 2) = 4.30265 (table): ± 24.84. 1 g over 100 cm² = 0.980665 Pa (exact): 49.03 ± 24.36 Pa.',
};
