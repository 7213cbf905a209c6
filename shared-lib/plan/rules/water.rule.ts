import { atLeast, dayAfterPrinting, daysAfterLamination, daysAfterPrinting, type StressRule } from '../stress-rule.ts';

const soaked = 'after 24 h in water at 23 °C, wiped dry';

export const waterRule: StressRule = {
  stress: 'water',
  proposals: [
    {
      degrees: ['humid'],
      methodId: 'rub',
      moment: dayAfterPrinting,
      preparation: 'wetted with water',
      conditions: { way: 'wet', liquid: 'water', lostLimitPct: 10 },
      replicates: 6,
      limits: [atLeast('strokesToLimit', 50)],
      reason: 'Condensation softens the print, and it is rubbed while it is wet.',
    },
    {
      degrees: ['wet'],
      methodId: 'rub',
      moment: dayAfterPrinting,
      preparation: 'wetted with water',
      conditions: { way: 'wet', liquid: 'water', lostLimitPct: 10 },
      replicates: 6,
      limits: [atLeast('strokesToLimit', 100)],
      reason: 'Packs that lie in water or ice rub against each other wet, again and again.',
    },
    {
      degrees: ['wet'],
      methodId: 'crinkle',
      moment: daysAfterPrinting(2),
      preparation: soaked,
      conditions: { flexes: 10 },
      replicates: 3,
      limits: [atLeast('grade', 4)],
      reason: 'Water creeps under the ink at every crease.',
    },
    {
      degrees: ['wet'],
      methodId: 'tape-adhesion',
      moment: daysAfterPrinting(2),
      preparation: soaked,
      conditions: { moment: 'print' },
      replicates: 5,
      limits: [atLeast('retainedPct', 95)],
      reason: 'Water takes the place of the ink on film that was treated too little or too much.',
    },
    {
      degrees: ['wet'],
      besides: 'lamination',
      methodId: 'lamination-bond',
      moment: daysAfterLamination(8),
      preparation: soaked,
      replicates: 5,
      limits: [atLeast('minimum', 1)],
      reason: 'Water reaches the adhesive from the cut edges and weakens it.',
    },
  ],
};
