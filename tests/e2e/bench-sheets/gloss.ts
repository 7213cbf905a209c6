import type { BenchExample } from './bench-example.ts';

export const example: BenchExample = {
  method: 'gloss',
  conditions: { treatment: '50 dry rubs' },
  rows: [
    { label: 'operator side', gloss: '72', glossAfter: '65' },
    { label: 'middle', gloss: '75', glossAfter: '66' },
    { label: 'drive side', gloss: '78', glossAfter: '67' },
  ],
  limits: [{ property: 'retentionPct', lower: '80' }],
  expect: [
    { property: 'gloss', text: '75.0 GU', interval: '95 % interval 67.5 to 82.5' },
    { property: 'glossAfter', text: '66.0 GU', interval: '95 % interval 63.5 to 68.5' },
    { property: 'retentionPct', text: '88.0 %', interval: '95 % interval 80.7 to 96.0' },
  ],
  verdict: [{ property: 'retentionPct', word: 'meets' }],
  source:
    '75 ± 4.3027·3/√3 = 7.45; 66 ± 4.3027·1/√3 = 2.48. 66/75 = 88 %; relative standard errors 0.023094 and 0.008748, √ of their squares’ sum ' +
    '0.024695, 2.56 degrees of freedom, t 3.5132: factor e^0.08676, 80.69 to 95.98 %.',
};
