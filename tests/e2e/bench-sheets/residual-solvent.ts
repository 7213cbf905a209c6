import type { BenchExample, TypedRow } from './bench-example.ts';

const STANDARDS: [string, string][] = [['0', '2.1'], ['2', '5.0'], ['4', '9.0'], ['6', '12.6'], ['8', '17.3'], ['10', '21.0'], ['12', '24.7']];

/** Solvent and kind of vial are typed once and carried down. */
const run = (solvent: string, specimen: TypedRow): TypedRow[] => [
  ...STANDARDS.map(([amountUg, area], index) => ({ ...(index === 0 ? { solvent, vial: 's' } : {}), amountUg, area })),
  { vial: 'p', specimen: '1', ...specimen },
];

export const example: BenchExample = {
  method: 'residual-solvent',
  conditions: { areaCm2: '100' },
  rows: [...run('ethyl acetate', { area: '13.5', limitMgM2: '5' }), ...run('n-propanol', { area: '1.6' })],
  limits: [{ property: 'total', upper: '10' }],
  expect: [
    { property: 'Residual solvents, total', text: 'between 0.5591 and 0.7565 mg/m²' },
    { property: 'Largest share of its own limit', text: '12.4 %', interval: '95 % interval 11.2 to 13.7' },
  ],
  verdict: [{ property: 'Residual solvents, total', word: 'meets' }],
  source:
    'Standards of J. C. Miller, J. N. Miller, Statistics for Analytical Chemistry (from memory), in µg, pieces of 0.01 m². 13.5 reads 6.207 µg, Fieller’s limits by ' +
    'the formula of N. R. Draper, H. Smith (5.5906 to 6.8251): 0.559 to 0.683 mg/m². 1.6 lies below 3.3·0.43285/1.93036 = 0.73997 µg, so it is at most 0.0740 mg/m² more.',
};
