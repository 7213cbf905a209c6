import type { BenchExample } from './bench-example.ts';

/** A pull of 70 mm: up to 0.6 N at 2 mm, then 0.4 N. */
const pull = ['Displacement (mm);Force (N)', ...Array.from({ length: 141 }, (_, index) => `${index / 2};${index <= 4 ? (0.15 * index).toFixed(2) : '0.40'}`)].join('\n');

export const example: BenchExample = {
  method: 'friction',
  conditions: { pairing: 'm', travelMm: '60' },
  rows: [
    { staticN: '0.58', kineticN: '0.39' },
    { staticN: '0.61', kineticN: '0.41' },
    { trace: { csv: pull } },
    { angleDeg: '15' },
  ],
  limits: [{ property: 'kinetic', lower: '0.15', upper: '0.25' }],
  expect: [
    { property: 'static', text: '0.295', interval: '95 % interval 0.265 to 0.326' },
    { property: 'kinetic', text: '0.204', interval: '95 % interval 0.191 to 0.217' },
  ],
  verdict: [{ property: 'kinetic', word: 'meets' }],
  source:
    'F/(m·g₀) on 1.96133 N: static 0.2957, 0.3110, 0.3059 and tan 15° = 0.2679, t(0.975; 3) = 3.18245; kinetic 0.1988, 0.2090, 0.2039, t(0.975; 2) = 4.30265 (table).',
};
