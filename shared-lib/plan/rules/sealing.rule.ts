import { atLeast, dayAfterPrinting, type StressRule } from '../stress-rule.ts';

const failure = 'ink on the foil, or a mark on the print';

export const sealingRule: StressRule = {
  stress: 'sealing',
  proposals: [
    {
      methodId: 'jaw-pick-off',
      moment: dayAfterPrinting,
      replicates: 9,
      limits: [atLeast('margin', 15)],
      reason: 'Jaws swing above their setting, and the print must not come off before that margin is used up.',
    },
    {
      degrees: ['usual'],
      methodId: 'heat-resistance',
      moment: dayAfterPrinting,
      preparation: 'against a hot bar',
      conditions: { facing: 'foil', failure },
      replicates: 6,
      limits: [atLeast('t05', 160)],
      reason: 'Jaws up to 150 °C touch the print on every pack; hardly one may show it.',
    },
    {
      degrees: ['hot'],
      methodId: 'heat-resistance',
      moment: dayAfterPrinting,
      preparation: 'against a hot bar',
      conditions: { facing: 'foil', failure },
      replicates: 6,
      limits: [atLeast('t05', 200)],
      reason: 'Hot jaws or plates touch the print on every pack; hardly one may show it.',
    },
  ],
};
