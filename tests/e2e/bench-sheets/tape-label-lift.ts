import type { BenchExample } from './bench-example.ts';

export const example: BenchExample = {
  method: 'tape-label-lift',
  conditions: { pulled: 'l', tape: 'paper label, lot 3', dwellMin: '1', angleDeg: '90', hoursSinceCure: '0.1' },
  rows: [
    { label: 'cyan', liftedPct: '0', adhesiveSticks: 'n' },
    { label: 'magenta', liftedPct: '10', adhesiveSticks: 'y' },
    { label: 'white', liftedPct: '20', adhesiveSticks: 'y' },
  ],
  limits: [{ property: 'liftedPct', upper: '40' }],
  expect: [
    { property: 'liftedPct', text: '10 %', interval: '95 % interval 0 to 35' },
    { property: 'worstPct', text: '20 %' },
    { property: 'specimensLiftedPct', text: '67 %', interval: '95 % interval 9 to 99' },
    { property: 'adhesiveDeadPct', text: '33 %', interval: '95 % interval 1 to 91' },
  ],
  verdict: [{ property: 'liftedPct', word: 'meets' }],
  flags: ['no lift, but its adhesive no longer sticks'],
  source: 'Mean 10, s = 10, t(0.975; 2) = 4.30265 (table): ± 24.8, an area ends at 0. Clopper–Pearson of 2 and of 1 of 3: 9.43 to 99.16 and 0.84 to 90.57 % (table).',
};
