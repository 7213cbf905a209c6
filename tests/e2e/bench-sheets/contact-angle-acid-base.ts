import type { BenchExample } from './bench-example.ts';

export const example: BenchExample = {
  method: 'contact-angle-acid-base',
  conditions: { liquidSet: '1', temperatureC: '20' },
  rows: [
    { liquid: 'w', angleDeg: '13.6' },
    { liquid: 'f', angleDeg: '12.9' },
    { liquid: 'b', angleDeg: '17.0' },
  ],
  expect: [
    { property: 'total', text: '55.32 mN/m' },
    { property: 'lifshitz', text: '42.48 mN/m' },
    { property: 'acid', text: '0.7715 mN/m' },
    { property: 'base', text: '53.43 mN/m' },
    { property: 'acidBase', text: '12.84 mN/m' },
  ],
  source:
    'Int. J. Microbiology 2011, 972494, Table 1, glass: 42.5 / 0.8 / 53.4 / 12.8 / 55.3. Three linear equations in the square roots with ' +
    'the liquids of van Oss (totals 72.8, 58.0, 44.4) give 42.481, 0.7715, 53.430, 2√(0.7715·53.430) = 12.841, sum 55.322.',
};
