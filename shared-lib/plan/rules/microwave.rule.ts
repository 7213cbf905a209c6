import { atLeast, atMost, dayAfterPrinting, daysAfterLamination, daysAfterPrinting, type StressRule } from '../stress-rule.ts';

const heated = 'heated in the microwave oven as on the pack';

export const microwaveRule: StressRule = {
  stress: 'microwave',
  proposals: [
    {
      methodId: 'heat-resistance',
      moment: dayAfterPrinting,
      preparation: 'print against a non-stick face',
      conditions: { facing: 'ptfe', failure: 'print softened, moved or discoloured' },
      replicates: 6,
      limits: [atLeast('t05', 130)],
      reason: 'Fat in the fill grows hotter than boiling water and heats the print in spots.',
    },
    {
      methodId: 'tape-adhesion',
      moment: daysAfterPrinting(7),
      preparation: heated,
      conditions: { moment: 'print' },
      replicates: 5,
      limits: [atLeast('retainedPct', 95)],
      reason: 'Steam loosens the print where hands take hold of the hot pack.',
    },
    {
      methodId: 'odour-intensity',
      moment: daysAfterPrinting(7),
      preparation: heated,
      replicates: 8,
      limits: [atMost('median', 2)],
      reason: 'Heat drives out of the print what nobody smells in the cold.',
    },
    {
      besides: 'lamination',
      methodId: 'lamination-recheck',
      moment: daysAfterLamination(10),
      preparation: heated,
      replicates: 6,
      limits: [],
      reason: 'Steam lifts the webs apart over the print.',
    },
  ],
};
