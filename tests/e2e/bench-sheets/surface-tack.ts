import type { BenchExample } from './bench-example.ts';

export const example: BenchExample = {
  method: 'surface-tack',
  conditions: { gradedAtMin: '5', temperatureC: '23', relativeHumidityPct: '50' },
  rows: [
    { label: 'cyan', grade: '1', tackyAtMin: '10', freeAtMin: '20' },
    { label: 'magenta', grade: '2', tackyAtMin: '10', freeAtMin: '20' },
    { label: 'white', grade: '2', tackyAtMin: '10', freeAtMin: '20' },
  ],
  limits: [
    { property: 'grade', upper: '1' },
    { property: 'tackFree', upper: '30' },
  ],
  expect: [
    { property: 'grade', text: '2', interval: 'range 1 to 2' },
    { property: 'worstGrade', text: '2' },
    { property: 'tackFree', text: 'between 10 and 20 min' },
  ],
  verdict: [
    { property: 'grade', word: 'undecided' },
    { property: 'tackFree', word: 'meets' },
  ],
  source: 'Three specimens tacky at 10 and free at 20 min: nothing is known but this bracket. Of the grades 1, 2 and 2 the middle one is 2.',
};
