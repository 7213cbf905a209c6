import type { BenchExample } from './bench-example.ts';

export const example: BenchExample = {
  method: 'cure-depth',
  conditions: { filmUm: '10', drawdownUm: '50', workingDoseMJPerCm2: '80', lamp: 'LED 395 nm', solvent: 'ethanol' },
  rows: [
    { doseMJPerCm2: '20', curedUm: '3.1' },
    { doseMJPerCm2: '40', curedUm: '9.8' },
    { doseMJPerCm2: '80', curedUm: '17.2' },
    { doseMJPerCm2: '160', curedUm: '23.5' },
  ],
  limits: [{ property: 'doseThrough', upper: '80' }],
  expect: [
    { property: 'doseThrough', text: '40.1 mJ/cm²', interval: '95 % interval 37.1 to 43.2' },
    { property: 'penetrationDepth', text: '9.90 µm', interval: '95 % interval 9.01 to 10.78' },
    { property: 'curedPct', text: '100 %' },
  ],
  verdict: [{ property: 'doseThrough', word: 'meets' }],
  source: 'Least squares of depth on the logarithm of the dose in another language; the ends of the dose by bisection of Fieller’s condition: 40.121 (37.086 to 43.167); slope 9.897 ± 0.882, t(0.975; 2) = 4.30265 (table).',
};
