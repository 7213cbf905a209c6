import { atLeast, dayAfterPrinting, type StressRule } from '../stress-rule.ts';

export const flexingRule: StressRule = {
  stress: 'flexing',
  proposals: [
    {
      methodId: 'crinkle',
      moment: dayAfterPrinting,
      conditions: { flexes: 10 },
      replicates: 3,
      limits: [atLeast('grade', 4)],
      reason: 'A stiff ink film breaks along the creases and flakes off.',
    },
  ],
};
