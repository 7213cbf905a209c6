import type { BenchExample } from './bench-example.ts';

export const example: BenchExample = {
  method: 'match-by-eye',
  conditions: { reference: 'approved print of March', illuminanceLx: '2000', observer: 'Imke', secondObserver: 'Jost' },
  rows: [
    { label: 'cyan', grade: '4.5', secondGrade: '4', difference: 'a little darker' },
    { label: 'magenta', grade: '4', secondGrade: '4' },
    { label: 'yellow', grade: '4.5', secondGrade: '4.5' },
  ],
  limits: [{ property: 'worst', lower: '4' }],
  expect: [
    { property: 'grade', text: '4' },
    { property: 'worst', text: '4' },
    { property: 'agreementPct', text: '67 %', interval: '95 % interval 9 to 99' },
    { property: 'withinHalfGradePct', text: '100 %', interval: '95 % interval 29 to 100' },
  ],
  verdict: [{ property: 'worst', word: 'meets' }],
  source:
    'Sorted 4, 4, 4, 4.5, 4.5, 4.5: the middle lies between 4 and 4-5, the lower of the two is reported. Alike in 2 of 3, Clopper–Pearson by ' +
    'SciPy’s beta quantiles 9.43 to 99.16 %; within half a grade in 3 of 3, from 0.025^(1/3) = 29.24 %. The worst of them is 4, which is what is asked for, as it was read.',
};
