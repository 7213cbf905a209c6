import { dayAfterPrinting, within, type StressRule } from '../stress-rule.ts';

export const machineRule: StressRule = {
  stress: 'machine',
  proposals: [
    {
      methodId: 'friction',
      moment: dayAfterPrinting,
      conditions: { pairing: 'film-metal' },
      preparation: 'print against metal',
      replicates: 5,
      limits: [within('kinetic', 0.15, 0.4)],
      reason: 'Too much friction on the former stops the web, too little lets it run askew.',
    },
  ],
};
