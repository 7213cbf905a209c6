import type { BenchExample } from './bench-example.ts';

export const example: BenchExample = {
  method: 'let-down',
  conditions: { goal: 's', targetStrengthPct: '100', batchKg: '80', inkSolidsPct: '40', diluent: 'extender', diluentSolidsPct: '30' },
  rows: [{ strengthPct: '124' }, { strengthPct: '125' }, { strengthPct: '126' }],
  expect: [
    { property: 'Diluent in the mixture', text: '20.0 %', interval: '95 % interval 18.4 to 21.6' },
    { property: 'Diluent to add', text: '25.0 per 100 parts of ink', interval: '95 % interval 22.5 to 27.5' },
    { property: 'Diluent for the batch', text: '20.0 kg', interval: '95 % interval 18.0 to 22.0' },
    { property: 'Solids when let down', text: '38 %' },
  ],
  source:
    'Arithmetic: 1 − 100/125 = 20 %, 25 parts per 100, 20 kg for 80 kg, solids 0.8·40 + 0.2·30 = 38 %. Strength 125 ± 2.484 (s = 1, t(0.975, 2) = 4.303): 18.38 to 21.56 %, ' +
    '22.52 to 27.48 parts.',
};
