import { atMost, daysAfterPrinting, onPress, type StressRule } from '../stress-rule.ts';

export const foodRule: StressRule = {
  stress: 'food',
  proposals: [
    {
      degrees: ['usual'],
      methodId: 'residual-solvent',
      moment: onPress,
      replicates: 8,
      limits: [atMost('total', 10)],
      reason: 'Solvent that is left in the print goes over into the food.',
    },
    {
      degrees: ['sensitive'],
      methodId: 'residual-solvent',
      moment: onPress,
      replicates: 8,
      limits: [atMost('total', 5), atMost('shareOfLimitPct', 100, 'the limit of each solvent')],
      reason: 'Close, long or fatty contact takes up solvent and small molecules from the print.',
    },
    {
      degrees: ['usual'],
      methodId: 'odour-intensity',
      moment: daysAfterPrinting(2),
      replicates: 8,
      limits: [atMost('median', 2)],
      reason: 'What is smelt in a jar is tasted in the food.',
    },
    {
      degrees: ['sensitive'],
      methodId: 'odour-intensity',
      moment: daysAfterPrinting(2),
      replicates: 8,
      limits: [atMost('median', 1)],
      reason: 'Food that lies close or long takes up even a slight smell.',
    },
    {
      degrees: ['sensitive'],
      methodId: 'blocking',
      moment: daysAfterPrinting(2),
      preparation: 'print against the food side of the web',
      conditions: { pressedBy: 'clamp', faces: 'print-back', pressureKPa: 50, temperatureC: 40, hours: 24 },
      replicates: 5,
      limits: [atMost('worstGrade', 1)],
      reason: 'In the reel the print lies on the side that will touch the food and can leave something there.',
    },
  ],
};
