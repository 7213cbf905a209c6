import { atLeast, dayAfterPrinting, type StressRule } from '../stress-rule.ts';

const conditions = { way: 'dry', lostLimitPct: 10 };

export const rubbingRule: StressRule = {
  stress: 'rubbing',
  proposals: [
    {
      degrees: ['handling'],
      methodId: 'rub',
      moment: dayAfterPrinting,
      preparation: 'dry',
      conditions,
      replicates: 6,
      limits: [atLeast('strokesToLimit', 100)],
      reason: 'Hands and shelves rub the print until it greys.',
    },
    {
      degrees: ['transport'],
      methodId: 'rub',
      moment: dayAfterPrinting,
      preparation: 'dry',
      conditions,
      replicates: 6,
      limits: [atLeast('strokesToLimit', 300)],
      reason: 'For days on the road each pack rubs against the next.',
    },
    {
      methodId: 'scratch',
      moment: dayAfterPrinting,
      conditions: { tool: 'fingernail' },
      replicates: 3,
      limits: [atLeast('grade', 4)],
      reason: 'An edge or a nail does at one stroke what rubbing does not.',
    },
  ],
};
