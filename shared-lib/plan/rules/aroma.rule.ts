import { atLeast, atMost, daysAfterLamination, daysAfterPrinting, onPress, type StressRule } from '../stress-rule.ts';

const filled = 'filled with the product, after 14 days at 40 °C';

export const aromaRule: StressRule = {
  stress: 'aroma',
  proposals: [
    {
      degrees: ['taken'],
      methodId: 'odour-triangle',
      moment: daysAfterPrinting(7),
      conditions: { alpha: 0.05 },
      replicates: 24,
      limits: [atLeast('pValue', 0.05, 'ISO 4120, risk of 5 %')],
      reason: 'Dry and fatty foods take up a foreign smell that only a comparison shows.',
    },
    {
      degrees: ['taken'],
      methodId: 'residual-solvent',
      moment: onPress,
      replicates: 8,
      limits: [atMost('total', 5)],
      reason: 'Solvent left in the print is the first thing that such a food takes up.',
    },
    {
      degrees: ['given'],
      besides: 'lamination',
      methodId: 'lamination-bond',
      moment: daysAfterLamination(21),
      preparation: filled,
      replicates: 5,
      limits: [atLeast('minimum', 0.8)],
      reason: 'Aroma oils go through the inner web and soften adhesive and ink.',
    },
    {
      degrees: ['given'],
      methodId: 'tape-adhesion',
      moment: daysAfterPrinting(16),
      preparation: filled,
      conditions: { moment: 'print' },
      replicates: 3,
      limits: [atLeast('retainedPct', 95)],
      reason: 'Aroma oils that reach the print from behind loosen it from the film.',
    },
  ],
};
