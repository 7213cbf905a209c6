import type { BenchExample } from './bench-example.ts';

export const example: BenchExample = {
  method: 'viscosity-cup',
  conditions: { cup: '4', temperatureC: '22', densityGCm3: '0.9' },
  rows: [{ seconds: '29.5' }, { seconds: '30' }, { seconds: '30.5' }],
  expect: [
    { property: 'Flow time', text: '30.0 s', interval: '95 % interval 28.8 to 31.2' },
    { property: 'Kinematic viscosity', text: '98.2 mm²/s', interval: '95 % interval 93.4 to 103.0' },
    { property: 'Dynamic viscosity', text: '88.4 mPa·s', interval: '95 % interval 84.1 to 92.7' },
  ],
  flags: ['Read at 22 °C, not at the 25 °C of the standard'],
  source: 'ASTM D1200 no. 4: 3.85·(30 − 4.49) = 98.21 mm²/s, × 0.9 = 88.39 mPa·s. s = 0.5, t(0.975, 2) = 4.303: ±1.242 s, ±4.78 mm²/s, ±4.30 mPa·s.',
};
