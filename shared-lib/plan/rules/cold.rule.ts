import { atLeast, dayAfterPrinting, daysAfterLamination, daysAfterPrinting, type StressRule } from '../stress-rule.ts';

const frozen = 'after 24 h at −18 °C, tested cold';

export const coldRule: StressRule = {
  stress: 'cold',
  proposals: [
    {
      degrees: ['chilled'],
      methodId: 'tape-adhesion',
      moment: daysAfterPrinting(2),
      preparation: 'after 24 h at 5 °C, wiped dry',
      conditions: { moment: 'print', temperatureC: 5 },
      replicates: 3,
      limits: [atLeast('retainedPct', 95)],
      reason: 'In the cold the binder grips less, and water condenses between it and the film.',
    },
    {
      degrees: ['frozen'],
      methodId: 'tape-adhesion',
      moment: daysAfterPrinting(2),
      preparation: frozen,
      conditions: { moment: 'print', temperatureC: -18 },
      replicates: 5,
      limits: [atLeast('retainedPct', 95)],
      reason: 'Frozen binders turn brittle and let go of film that they held when warm.',
    },
    {
      degrees: ['frozen'],
      methodId: 'crinkle',
      moment: daysAfterPrinting(2),
      preparation: frozen,
      conditions: { flexes: 10, temperatureC: -18 },
      replicates: 3,
      limits: [atLeast('grade', 4)],
      reason: 'Packs are crumpled in the freezer, where an ink film breaks that bends when warm.',
    },
    {
      degrees: ['frozen'],
      besides: 'lamination',
      methodId: 'lamination-bond',
      moment: daysAfterLamination(8),
      preparation: frozen,
      conditions: { temperatureC: -18 },
      replicates: 5,
      limits: [atLeast('minimum', 1)],
      reason: 'Adhesives harden in the freezer, and the bond then gives way at a blow.',
    },
    {
      degrees: ['chilled'],
      methodId: 'rub',
      moment: dayAfterPrinting,
      preparation: 'wetted with water',
      conditions: { way: 'wet', liquid: 'water', lostLimitPct: 10 },
      replicates: 6,
      limits: [atLeast('strokesToLimit', 50)],
      reason: 'A pack out of the cold is wet with condensation when it is rubbed.',
    },
  ],
};
