import type { BenchExample } from './bench-example.ts';

export const example: BenchExample = {
  method: 'colour-measured',
  conditions: { reference: 'cyan solid of the pattern print', referenceL: '50', referenceA: '2.6772', referenceB: '-79.7751' },
  rows: [{ label: 'middle of the web', L: '50', a: '0', b: '-82.7485' }],
  limits: [{ property: 'deltaE00', upper: '2' }],
  expect: [
    { property: 'deltaE00', text: '2.042' },
    { property: 'deltaEab', text: '4.001' },
    { property: 'deltaL', text: '0' },
    { property: 'deltaA', text: '−2.677' },
    { property: 'deltaB', text: '−2.973' },
    { property: 'deltaC', text: '2.928' },
  ],
  verdict: [{ property: 'deltaE00', word: 'undecided' }],
  source:
    'Sharma, Wu & Dalal 2005, pair 1: ΔE00 2.0425, more exactly 2.04246. ΔE*ab √(2.6772² + 2.9734²) = 4.0011; ' +
    'ΔC* 82.7485 − √(2.6772² + 79.7751²) = 2.9285. One reading has no interval, so that the guarded rule leaves it undecided.',
};
