import { atLeast, atMost, dayAfterPrinting, onFilm, onPress, type StressRule } from '../stress-rule.ts';

export const printingRule: StressRule = {
  stress: 'printing',
  proposals: [
    {
      methodId: 'test-fluids',
      moment: onFilm,
      replicates: 10,
      // Polyethylene and polypropylene; polyester and polyamide are asked for more.
      limits: [atLeast('weakestPosition', 38)],
      reason: 'Ink wets and holds only on treated film, and the weakest place of the web decides.',
    },
    {
      methodId: 'tape-adhesion',
      moment: onPress,
      conditions: { moment: 'press' },
      replicates: 3,
      limits: [atLeast('retainedPct', 90)],
      reason: 'Ink that does not hold on the running press is found while the job can still be stopped.',
    },
    {
      methodId: 'tape-adhesion',
      moment: dayAfterPrinting,
      conditions: { moment: 'print' },
      replicates: 5,
      limits: [atLeast('retainedPct', 95)],
      reason: 'Adhesion settles within a day; what tape takes then, use takes as well.',
    },
    {
      degrees: ['cured'],
      methodId: 'cure-rubs',
      moment: onPress,
      conditions: { requiredDoubleRubs: 10 },
      replicates: 3,
      limits: [atLeast('least', 10)],
      reason: 'An ink film that solvent rubs through is not cured.',
    },
    {
      degrees: ['cured'],
      methodId: 'cure-depth',
      moment: onPress,
      replicates: 6,
      limits: [atLeast('curedPct', 95)],
      reason: 'A print that is cured at the surface only stays soft beneath and gives off what did not react.',
    },
    {
      degrees: ['cured'],
      methodId: 'surface-tack',
      moment: onPress,
      replicates: 3,
      limits: [atMost('grade', 1)],
      reason: 'A tacky surface shows that oxygen or a weak lamp held up the cure.',
    },
    {
      degrees: ['cured'],
      methodId: 'tape-label-lift',
      moment: dayAfterPrinting,
      replicates: 5,
      limits: [atMost('worstPct', 5)],
      reason: 'A cured film that shrank lifts off in flakes under an adhesive that pulls for long.',
    },
  ],
};
