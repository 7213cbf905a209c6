import { atLeast, dayAfterPrinting, daysAfterPrinting, type StressRule } from '../stress-rule.ts';

export const greaseRule: StressRule = {
  stress: 'grease',
  proposals: [
    {
      methodId: 'rub',
      moment: dayAfterPrinting,
      preparation: 'wetted with vegetable oil',
      conditions: { way: 'wet', liquid: 'vegetable oil', lostLimitPct: 10 },
      replicates: 6,
      limits: [atLeast('strokesToLimit', 50)],
      reason: 'Greasy hands and spilt fill rub on the print.',
    },
    {
      methodId: 'tape-adhesion',
      moment: daysAfterPrinting(2),
      preparation: 'after 24 h under vegetable oil at 40 °C, wiped dry',
      conditions: { moment: 'print' },
      replicates: 5,
      limits: [atLeast('retainedPct', 95)],
      reason: 'Fat swells the binder and loosens it from the film.',
    },
  ],
};
