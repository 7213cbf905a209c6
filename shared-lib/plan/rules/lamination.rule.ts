import { atLeast, atMost, daysAfterLamination, onPress, type StressRule } from '../stress-rule.ts';

export const laminationRule: StressRule = {
  stress: 'lamination',
  proposals: [
    {
      methodId: 'residual-solvent',
      moment: onPress,
      replicates: 8,
      limits: [atMost('total', 20)],
      reason: 'Solvent that is left in the ink is shut in by the second web, slows the adhesive and blows bubbles.',
    },
    {
      methodId: 'lamination-bond',
      moment: daysAfterLamination(1),
      replicates: 5,
      limits: [atLeast('minimum', 0.5)],
      reason: 'Before the roll is slit, the bond must carry the web; what is too low after a day seldom recovers.',
    },
    {
      degrees: ['film'],
      methodId: 'lamination-bond',
      moment: daysAfterLamination(7),
      replicates: 5,
      limits: [atLeast('minimum', 1.5)],
      reason: 'The print is the weakest layer between the webs, and a bond shows what it is worth once the adhesive is cured.',
    },
    {
      degrees: ['metallised'],
      methodId: 'lamination-bond',
      moment: daysAfterLamination(7),
      replicates: 5,
      limits: [atLeast('minimum', 0.8)],
      reason: 'On metallised film the metal may let go of its web before the ink does, at a lower force.',
    },
    {
      degrees: ['foil'],
      methodId: 'lamination-bond',
      moment: daysAfterLamination(7),
      replicates: 5,
      limits: [atLeast('minimum', 2)],
      reason: 'Foil laminates are made for hard use, and the print between the webs must carry it once the adhesive is cured.',
    },
    {
      methodId: 'lamination-recheck',
      moment: daysAfterLamination(2),
      replicates: 6,
      limits: [],
      reason: 'Bubbles and tunnels over dense ink appear hours after the laminator and grow.',
    },
  ],
};
