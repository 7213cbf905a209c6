import type { BenchExample } from './bench-example.ts';

/** The same reflectance at every wavelength, 400 to 700 nm by 10. */
const grey = (pct: string) => ({ pasted: `400-700 %: ${Array.from({ length: 31 }, () => pct).join(' ')}` });

export const example: BenchExample = {
  method: 'print-density',
  variant: 'from spectra',
  conditions: { paperSpectrum: grey('80') },
  rows: [{ label: 'operator side', spectrum: grey('10') }, { label: 'drive side', spectrum: grey('8') }],
  expect: ['cyan', 'magenta', 'yellow', 'visual'].map((property) => ({ property, text: '0.95 minus paper', interval: '95 % interval 0.34 to 1.57' })),
  source:
    'Of a grey every spectral product gives −log10 R, whatever its weights (ISO 5-3): 1 − 0.09691 and 1.09691 − 0.09691, mean 0.95154, s = 0.06853, ' +
    't(0.975; 1) = 12.7062 (table): ± 0.6157.',
};
