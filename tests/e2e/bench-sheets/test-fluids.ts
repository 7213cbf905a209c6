import type { BenchExample } from './bench-example.ts';

export const example: BenchExample = {
  method: 'test-fluids',
  conditions: { temperatureC: '23', relativeHumidityPct: '50', side: 'i' },
  rows: [
    { label: 'operator side', wetsMNm: '36', retractsMNm: '38' },
    { wetsMNm: '38', retractsMNm: '40' },
    { label: 'middle', wetsMNm: '38', retractsMNm: '40' },
    { wetsMNm: '38', retractsMNm: '40' },
    { label: 'drive side', wetsMNm: '40', retractsMNm: '42' },
  ],
  limits: [{ property: 'wettingTension', lower: '36' }],
  expect: [
    { property: 'wettingTension', text: '39.0 mN/m', interval: '95 % interval 37.2 to 40.8' },
    { property: 'weakestPosition', text: 'between 36 and 38 mN/m' },
  ],
  verdict: [{ property: 'wettingTension', word: 'meets' }],
  source:
    'The brackets lie evenly about 39, and so does their likelihood. Profile likelihood of a normal through the brackets with the ' +
    'drop 5/2·ln(1 + 2.7764²/4) = 2.6851, by SciPy: 37.246 to 40.754.',
};
