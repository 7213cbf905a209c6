import { atLeast, atMost, dayAfterPrinting, type StressRule } from '../stress-rule.ts';

export const loadRule: StressRule = {
  stress: 'load',
  proposals: [
    {
      degrees: ['reel'],
      methodId: 'blocking',
      moment: dayAfterPrinting,
      preparation: 'print against the back of the web',
      conditions: { pressedBy: 'clamp', faces: 'print-back', pressureKPa: 50, temperatureC: 40, hours: 24 },
      replicates: 5,
      limits: [atMost('worstGrade', 1)],
      reason: 'In the reel the print lies pressed on the back of the next turn and sticks or sets off there.',
    },
    {
      degrees: ['pallet'],
      methodId: 'blocking',
      moment: dayAfterPrinting,
      preparation: 'print against print',
      conditions: { pressedBy: 'clamp', faces: 'print-print', pressureKPa: 20, temperatureC: 50, hours: 48 },
      replicates: 5,
      limits: [atMost('worstGrade', 1)],
      reason: 'At the foot of a stack in a warm store print lies pressed on print for weeks.',
    },
    {
      degrees: ['pallet'],
      methodId: 'friction',
      moment: dayAfterPrinting,
      preparation: 'print against print',
      conditions: { pairing: 'print-print' },
      replicates: 5,
      limits: [atLeast('static', 0.3)],
      reason: 'Packs that slide on each other let the stack lean and fall.',
    },
  ],
};
