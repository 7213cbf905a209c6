import type { BenchExample } from './bench-example.ts';

export const example: BenchExample = {
  method: 'lamination-recheck',
  conditions: { laminatedOn: '2026-03-09', frameCm2: '500', webWidthMm: '1000' },
  rows: [
    { hours: '1', acrossMm: '100', alongM: '2', coveragePct: '0', bubbles: '0', tunnels: '0', delaminations: '0' },
    { acrossMm: '600', alongM: '2', coveragePct: '100', bubbles: '2', tunnels: '0', delaminations: '0' },
    { hours: '24', acrossMm: '100', alongM: '4', coveragePct: '0', bubbles: '1', tunnels: '0', delaminations: '0', curlMm: '3' },
    { acrossMm: '600', alongM: '4', coveragePct: '100', bubbles: '9', tunnels: '0', delaminations: '0', curlMm: '5' },
  ],
  limits: [{ property: 'defects', upper: '40' }],
  expect: [
    { property: 'defects', text: '100 per m²', interval: '95 % interval 48 to 184' },
    { property: 'bubbles', text: '100 per m²' },
    { property: 'tunnels', text: '0 per m²', interval: '95 % interval 0 to 37' },
    { property: 'growth', text: '5', interval: '95 % interval 1 to 47' },
    { property: 'coverageFactor', text: '1.25', interval: '95 % interval 1.05 to 1.67' },
    { property: 'curl', text: '4 mm', interval: '95 % interval −9 to 17' },
    { property: 'lastCheckH', text: '24 h' },
  ],
  verdict: [{ property: 'defects', word: 'falls short' }],
  flags: ['the 10 defects show that there are more of them where more ink lies'],
  source:
    '10 in 0.1 m², limits of 10: 4.795 and 18.39 (Garwood); of 0: 3.689. 10 in 0.1 m² against 2 in 0.1 m²: factor 5, share 10/12 by Clopper–Pearson 0.5159 to 0.9791, odds 1.07 to 46.9. ' +
    'Coverage: 9 against 1 over 100 %, 9^0.1 = 1.246; 2·(l_max − l) = 3.8415 at 1.054 and 1.667 by an independent root search. Curl 4 ± 12.706·√2/√2.',
};
