import type { BenchExample } from './bench-example.ts';

export const example: BenchExample = {
  method: 'treatment-decay',
  conditions: { requiredMNm: '38', temperatureC: '23', relativeHumidityPct: '50' },
  rows: [
    { days: '1', wetsMNm: '44', retractsMNm: '45' },
    { days: '3', wetsMNm: '42', retractsMNm: '43' },
    { days: '7', wetsMNm: '41', retractsMNm: '42' },
    { days: '14', wetsMNm: '39', retractsMNm: '40' },
    { days: '30', wetsMNm: '37', retractsMNm: '38' },
  ],
  expect: [
    { property: 'daysUntilRequired', text: '26 d', interval: '95 % interval 19 to 42' },
    { property: 'testAgainBy', text: '18 d' },
    { property: 'initial', text: '46.3 mN/m', interval: '95 % interval 44.9 to 47.6' },
  ],
  source:
    'Likeliest log-time curve through the brackets, scatter held at 0.25, by SciPy: 46.256 − 5.737·log10(1 + t), which comes to 38 on ' +
    'day 10^(8.256/5.737) − 1 = 26.49. Profiles at the drop 5/2·ln(1 + 3.1824²/3) = 3.688: 18.86 to 41.70 days, 44.92 to 47.57 mN/m; ' +
    'the last whole day before 18.86 is 18.',
};
