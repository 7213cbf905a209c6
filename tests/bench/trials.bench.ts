import type { Censored } from '../../shared-lib/statistics/censored-normal.ts';
import { compareGroups } from '../../shared-lib/statistics/compare-groups.ts';
import { seededRandom } from '../../shared-lib/statistics/random.ts';
import { compare, milliseconds } from './compare.ts';

/** Bonds of which one in eight tore. */
function torn(trials: number): { name: string; readings: Censored[] }[] {
  const random = seededRandom(6);
  return Array.from({ length: trials }, (_, trial) => ({
    name: `R${trial}`,
    readings: Array.from({ length: 5 }, (): Censored => {
      const low = 3 + 0.3 * random.normal();
      return { low, high: random.uniform() < 0.12 ? null : low };
    }),
  }));
}

const question = { control: 'R0', kind: 'number', scale: { low: 0, high: 5 }, unit: 'N/15 mm', level: 0.95 } as const;
const [few, many] = [torn(20), torn(200)];

await compare({
  what: '200 trials with torn specimens against a control',
  peer: 'ten times the same with 20 trials',
  target: { atMost: 1.5 },
  unit: 'ms',
  runs: 9,
  ours: milliseconds(() => compareGroups({ ...question, groups: many })),
  theirs: milliseconds(() => Array.from({ length: 10 }, () => compareGroups({ ...question, groups: few }))),
});
