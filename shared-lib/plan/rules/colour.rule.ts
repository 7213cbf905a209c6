import { atMost, dayAfterPrinting, onPress, type StressRule } from '../stress-rule.ts';

export const colourRule: StressRule = {
  stress: 'colour',
  proposals: [
    {
      methodId: 'colour-measured',
      moment: onPress,
      replicates: 5,
      limits: [atMost('deltaE00', 2)],
      reason: 'Packs of several runs stand side by side, and their difference is seen before anything is read.',
    },
    {
      methodId: 'match-by-eye',
      moment: dayAfterPrinting,
      replicates: 4,
      limits: [],
      reason: 'Gloss, metamerism and the light of the shop show to the eye and not in one number.',
    },
  ],
};
