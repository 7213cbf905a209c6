import type { BenchExample } from './bench-example.ts';

export const example: BenchExample = {
  method: 'cure-rubs',
  conditions: { solvent: 'ethanol', requiredDoubleRubs: '40', loadG: '1000' },
  rows: [
    { label: 'cyan', doubleRubs: '25', brokeThrough: 'y' },
    { label: 'magenta', doubleRubs: '50', brokeThrough: 'y' },
    { label: 'white', doubleRubs: '100', brokeThrough: 'y' },
  ],
  limits: [{ property: 'least', lower: '40' }],
  expect: [
    { property: 'doubleRubs', text: '50 double rubs', interval: '95 % interval 9 to 280' },
    { property: 'median', text: '50 double rubs' },
    { property: 'least', text: '25 double rubs' },
    { property: 'shareStandingPct', text: '67 %', interval: '95 % interval 9 to 99' },
  ],
  verdict: [{ property: 'least', word: 'falls short' }],
  flags: ['It does not show conversion'],
  source: 'Geometric mean of 25, 50 and 100, × or ÷ exp(4.30265 · ln 2/√3) = 5.595 (t from a table). Clopper–Pearson of 2 of 3: 9.43 to 99.16 % (table). 25 of the 40 asked for: the weakest specimen falls short as it was read.',
};
