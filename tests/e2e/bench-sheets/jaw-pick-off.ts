import type { BenchExample } from './bench-example.ts';

export const example: BenchExample = {
  method: 'jaw-pick-off',
  conditions: { sealingC: '170', pressureNPerCm2: '30', dwellS: '0,5', jawFace: 'm' },
  rows: [
    { celsius: '170', grade: '5', found: 'n' },
    { grade: '5', found: 'n' },
    { grade: '5', found: 'n' },
    { celsius: '180', grade: '5', found: 'n' },
    { grade: '4', found: 'j' },
    { grade: '5', found: 'n' },
    { celsius: '190', grade: '2', found: 'j' },
  ],
  limits: [
    { property: 'begins', lower: '165' },
    { property: 'margin', lower: '5' },
  ],
  expect: [
    { property: 'begins', text: 'between 170 and 180 °C' },
    { property: 'margin', text: 'between 0 and 10 °C' },
    { property: 'gradeAtSealing', text: '5', interval: 'range 5 to 5' },
    { property: 'worst', text: '2' },
  ],
  verdict: [
    { property: 'begins', word: 'meets' },
    { property: 'margin', word: 'undecided' },
  ],
  source: 'No seal of three was picked off at 170 °C, one of three at 180 °C: it begins between them, 0 to 10 °C above the jaw on the line.',
};
