import type { BenchExample } from './bench-example.ts';

/** Reflectances of 400 to 540 nm (15 bands) and of 550 to 700 nm (16 bands). */
const step = (blue: string, red: string) => ({ pasted: `400-700 %: ${Array.from({ length: 31 }, (_, band) => (band < 15 ? blue : red)).join(' ')}` });

export const example: BenchExample = {
  method: 'colour-strength',
  variant: 'from spectra',
  conditions: { standardName: 'retained lot of January', standardSpectrum: step('15', '60'), substrateSpectrum: step('85', '85') },
  rows: [{ label: 'new lot', spectrum: step('12', '50') }],
  expect: [{ property: 'strengthPct', text: '137.4 %' }],
  source:
    'K/S (1 − R)²/2R: 0.12 → 3.22667, 0.5 → 0.25, 0.15 → 2.40833, 0.6 → 0.13333, substrate 0.85 → 0.01324. Summed: (15·3.21343 + 16·0.23676)/(15·2.39510 + 16·0.12010) = 51.9897/37.8480 = 137.364 %.',
};
