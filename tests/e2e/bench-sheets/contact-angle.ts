import type { BenchExample } from './bench-example.ts';

export const example: BenchExample = {
  method: 'contact-angle',
  conditions: { model: 'o', liquidSet: '2', temperatureC: '23' },
  rows: [
    { liquid: 'w', angleDeg: '82' },
    { liquid: 'd', angleDeg: '63' },
  ],
  expect: [
    { property: 'total', text: '30.27 mN/m' },
    { property: 'dispersive', text: '23.22 mN/m' },
    { property: 'polar', text: '7.054 mN/m' },
  ],
  source:
    'Owens & Wendt 1969, poly(vinylidene fluoride): 82° and 63° give 23.2 / 7.1 / 30.3. The two equations ' +
    '72.8·(1 + cos 82°) = 2√(21.8 d) + 2√(51.0 p) and 50.8·(1 + cos 63°) = 2√(49.5 d) + 2√(1.3 p) give d 23.2207, p 7.0537.',
};
