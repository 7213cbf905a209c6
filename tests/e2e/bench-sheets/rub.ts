import type { BenchExample } from './bench-example.ts';

export const example: BenchExample = {
  method: 'rub',
  conditions: { way: 'd', receptor: 'white paper', loadG: '900', lostLimitPct: '10' },
  rows: [
    { specimen: 'a', strokes: '0', density: '1.00' },
    { strokes: '50', density: '0.90', transferred: '0.05' },
    { strokes: '100', density: '0.85' },
    { strokes: '200', density: '0.80' },
    { specimen: 'b', strokes: '0', density: '1.00' },
    { strokes: '50', density: '0.95', transferred: '0.03' },
    { strokes: '100', density: '0.90' },
    { strokes: '200', density: '0.84' },
    { specimen: 'c', strokes: '0', density: '1.00' },
    { strokes: '50', density: '0.98', transferred: '0.01' },
    { strokes: '100', density: '0.95' },
    { strokes: '200', density: '0.90' },
  ],
  limits: [{ property: 'lostPct', upper: '30' }],
  expect: [
    { property: 'strokesToLimit', text: '100 strokes', interval: '95 % interval 18 to 559' },
    { property: 'median', text: '100 strokes' },
    { property: 'least', text: '50 strokes' },
    { property: 'lostPct', text: '15 %', interval: '95 % interval 3 to 28' },
    { property: 'transferred', text: '0.030 D' },
  ],
  verdict: [{ property: 'lostPct', word: 'meets' }],
  source:
    '10 % are lost at 50, 100 and 200 strokes: geometric mean 100, t(0.975; 2) = 4.30265 (table), 100 × or ÷ exp(4.3026527 · ln 2/√3) = 5.594998 (559.4998). ' +
    'At 200 strokes 20, 16 and 10 % are lost: mean 15.33, s = 5.033, ± 12.50.',
};
