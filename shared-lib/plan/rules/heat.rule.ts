import { atLeast, atMost, dayAfterPrinting, daysAfterLamination, daysAfterPrinting, type StressRule } from '../stress-rule.ts';

const process = 'after the heat process, filled with water';
const failure = 'print moved, bled or stuck to the facing pack';
const wet = { facing: 'itself', failure };

export const heatRule: StressRule = {
  stress: 'heat',
  proposals: [
    {
      degrees: ['hot-fill'],
      methodId: 'heat-resistance',
      moment: dayAfterPrinting,
      preparation: 'print against print',
      conditions: wet,
      replicates: 6,
      limits: [atLeast('t05', 95)],
      reason: 'The fill heats the print through to about 85 °C while packs lie on each other.',
    },
    {
      degrees: ['pasteurised'],
      methodId: 'heat-resistance',
      moment: dayAfterPrinting,
      preparation: 'print against print',
      conditions: wet,
      replicates: 6,
      limits: [atLeast('t05', 110)],
      reason: 'Packs are held near 100 °C while they lie on each other.',
    },
    {
      degrees: ['retort'],
      methodId: 'heat-resistance',
      moment: dayAfterPrinting,
      preparation: 'print against print',
      conditions: wet,
      replicates: 6,
      limits: [atLeast('t05', 135)],
      reason: 'Packs are held at 121 °C and above under pressure while they touch.',
    },
    {
      methodId: 'tape-adhesion',
      moment: daysAfterPrinting(7),
      preparation: process,
      conditions: { moment: 'print' },
      replicates: 5,
      limits: [atLeast('retainedPct', 95)],
      reason: 'Hot water swells the binder and loosens what held before.',
    },
    {
      degrees: ['pasteurised', 'retort'],
      methodId: 'colour-measured',
      moment: daysAfterPrinting(7),
      preparation: `${process}, against the same print unheated`,
      replicates: 5,
      limits: [atMost('deltaE00', 3)],
      reason: 'Colourants that bleed or break down in the process change the shade.',
    },
    {
      degrees: ['pasteurised', 'hot-fill'],
      besides: 'lamination',
      methodId: 'lamination-bond',
      moment: daysAfterLamination(10),
      preparation: process,
      replicates: 5,
      limits: [atLeast('minimum', 1)],
      reason: 'Heat and moisture soften adhesive and ink at once, and the webs part where it was weak before.',
    },
    {
      degrees: ['retort'],
      besides: 'lamination',
      methodId: 'lamination-bond',
      moment: daysAfterLamination(10),
      preparation: process,
      replicates: 5,
      limits: [atLeast('minimum', 1.5)],
      reason: 'In the retort steam presses between the webs, and what parts there lets the pack spoil.',
    },
    {
      besides: 'lamination',
      methodId: 'lamination-recheck',
      moment: daysAfterLamination(10),
      preparation: process,
      replicates: 6,
      limits: [],
      reason: 'Blisters over the print show only once the pack has been through the heat.',
    },
  ],
};
