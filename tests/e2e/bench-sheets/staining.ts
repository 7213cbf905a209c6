import type { BenchExample } from './bench-example.ts';

export const example: BenchExample = {
  method: 'staining',
  conditions: { cause: 'w', white: 'cotton, lot 3', treatment: '20 strokes, 900 g, water' },
  rows: [
    { label: 'cyan', whiteL: '95', whiteA: '0', whiteB: '0', L: '91', a: '0', b: '0' },
    { label: 'magenta', L: '89', a: '0', b: '0' },
    { label: 'black', L: '87', a: '0', b: '0' },
  ],
  limits: [{ property: 'deltaEGS', upper: '12' }],
  expect: [
    { property: 'grade', text: '3-4' },
    { property: 'deltaEGS', text: '6.0', interval: '95 % interval 1.0 to 11.0' },
  ],
  verdict: [{ property: 'deltaEGS', word: 'meets' }],
  source: 'ISO 105-A04 of greys: ΔE GS = ΔL = 4, 6, 8; mean 6, s = 2, t(0.975; 2) = 4.30265 (table): ± 4.97. 6.1 − 1.45·ln 6 = 3.50; the step of ISO 105-A03 for 3-4 is 6.0.',
};
