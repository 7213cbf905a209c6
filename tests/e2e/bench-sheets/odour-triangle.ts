import type { BenchExample } from './bench-example.ts';

export const example: BenchExample = {
  method: 'odour-triangle',
  conditions: { seed: '41' },
  // The jars that follow from 41: the odd ones are 976, 224, 435, 741, 473 and 217; the sixth assessor names another.
  rows: [['IR', '976'], ['TV', '224'], ['AQ', '435'], ['P4', '741'], ['P5', '473'], ['P6', '865']].map(([assessor, odd]) => ({ assessor: assessor!, odd: odd! })),
  limits: [{ property: 'shareDiscriminating', upper: '30' }],
  expect: [
    { property: 'Probability of so many by guessing', text: '0.01783' },
    { property: 'Share who can tell them apart', text: '75 %', interval: '95 % interval 4 to 99' },
    { property: 'Right answers needed for a difference', text: '5' },
  ],
  verdict: [{ property: 'Share who can tell them apart', word: 'undecided' }],
  source:
    'ISO 4120: P(X ≥ 5) of 6 with chance 1/3 = (6·2 + 1)/729 = 0.017833; table: 5 of 6 at 5 %. Share 1.5·5/6 − 0.5 = 75 %; exact limits of 5 in 6 are 0.3588 and 0.9958 ' +
    '(Clopper–Pearson tables), less the guesses 3.8 and 99.4 %.',
};
