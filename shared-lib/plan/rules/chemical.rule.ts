import { atLeast, dayAfterPrinting, daysAfterLamination, daysAfterPrinting, type StressRule } from '../stress-rule.ts';

const filled = 'filled with the product, after 14 days at 40 °C';

export const chemicalRule: StressRule = {
  stress: 'chemical',
  proposals: [
    {
      methodId: 'rub',
      moment: dayAfterPrinting,
      preparation: 'wetted with the product',
      conditions: { way: 'wet', liquid: 'the product', lostLimitPct: 10 },
      replicates: 6,
      limits: [atLeast('strokesToLimit', 50)],
      reason: 'What runs down the pack dissolves the print while it is handled.',
    },
    {
      methodId: 'tape-adhesion',
      moment: daysAfterPrinting(16),
      preparation: filled,
      conditions: { moment: 'print' },
      replicates: 5,
      limits: [atLeast('retainedPct', 95)],
      reason: 'Surfactant and solvent go through the inner web and reach the ink from behind.',
    },
    {
      besides: 'lamination',
      methodId: 'lamination-bond',
      moment: daysAfterLamination(21),
      preparation: filled,
      replicates: 5,
      limits: [atLeast('minimum', 1)],
      reason: 'What goes through the inner web attacks the adhesive, and the bond falls week by week.',
    },
  ],
};
