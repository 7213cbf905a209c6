import type { BenchExample } from './bench-example.ts';

export const example: BenchExample = {
  method: 'coat-weight',
  conditions: { areaCm2: '100', solidsPct: '30', dryDensityGCm3: '1.2' },
  rows: [['0.6310', '0.6140'], ['0.6320', '0.6140'], ['0.6330', '0.6140']].map(([coatedG, bareG]) => ({ coatedG: coatedG!, bareG: bareG! })),
  limits: [{ property: 'dry', lower: '1.5', upper: '2.1' }],
  expect: [
    { property: 'Dry coat weight', text: '1.80 g/m²', interval: '95 % interval 1.55 to 2.05' },
    { property: 'Wet coat weight', text: '6.00 g/m²', interval: '95 % interval 5.17 to 6.83' },
    { property: 'Dry thickness', text: '1.50 µm', interval: '95 % interval 1.29 to 1.71' },
  ],
  verdict: [{ property: 'Dry coat weight', word: 'meets' }],
  source: 'Arithmetic: 17, 18 and 19 mg on 0.01 m²; s = 0.1, t(0.975, 2) = 4.303, half-width 4.303·0.1/√3 = 0.248; wet ÷ 0.30, thickness ÷ 1.2.',
};
