import { atLeast, atMost, dayAfterPrinting, daysAfterPrinting, type StressRule } from '../stress-rule.ts';

const shrunk = 'after shrinking as on the container';

export const shrinkingRule: StressRule = {
  stress: 'shrinking',
  proposals: [
    {
      methodId: 'tape-adhesion',
      moment: daysAfterPrinting(2),
      preparation: shrunk,
      conditions: { moment: 'print' },
      replicates: 5,
      limits: [atLeast('retainedPct', 95)],
      reason: 'The film draws together under an ink film that does not, and the ink buckles off.',
    },
    {
      methodId: 'crinkle',
      moment: daysAfterPrinting(2),
      preparation: shrunk,
      conditions: { flexes: 10 },
      replicates: 3,
      limits: [atLeast('grade', 4)],
      reason: 'Shrunk ink lies in folds that break when the sleeve is squeezed.',
    },
    {
      methodId: 'heat-resistance',
      moment: dayAfterPrinting,
      preparation: 'print against print',
      conditions: { facing: 'itself', failure: 'print moved, bled or stuck to the facing pack' },
      replicates: 6,
      limits: [atLeast('t05', 100)],
      reason: 'Sleeves touch each other in the hot tunnel.',
    },
    {
      methodId: 'colour-measured',
      moment: daysAfterPrinting(2),
      preparation: shrunk,
      replicates: 5,
      limits: [atMost('deltaE00', 4)],
      reason: 'The ink film grows thicker as the film shrinks, and the shade deeper.',
    },
  ],
};
