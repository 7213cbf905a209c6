import { atLeast, dayAfterPrinting, type StressRule } from '../stress-rule.ts';

const blueWool = 'with blue wool 1 to 8 beside it';

export const lightRule: StressRule = {
  stress: 'light',
  proposals: [
    {
      degrees: ['shop'],
      methodId: 'light-exposure',
      moment: dayAfterPrinting,
      preparation: blueWool,
      conditions: { lamp: 'cool-white', exposureUnit: 'h', readAt: '24 48 96 192 384', endpointRetentionPct: 70 },
      replicates: 6,
      limits: [atLeast('retentionPct', 70), atLeast('lightFastness', 3)],
      reason: 'Months under the lamps of a shop fade weak colourants.',
    },
    {
      degrees: ['window'],
      methodId: 'light-exposure',
      moment: dayAfterPrinting,
      preparation: blueWool,
      conditions: { lamp: 'xenon-window', exposureUnit: 'h', readAt: '24 48 96 192 384', endpointRetentionPct: 70 },
      replicates: 6,
      limits: [atLeast('retentionPct', 70), atLeast('lightFastness', 5)],
      reason: 'Daylight through glass fades in weeks what shop light fades in a year.',
    },
    {
      degrees: ['outdoors'],
      methodId: 'light-exposure',
      moment: dayAfterPrinting,
      preparation: blueWool,
      conditions: { lamp: 'xenon-daylight', exposureUnit: 'h', readAt: '48 96 192 384 768', endpointRetentionPct: 70 },
      replicates: 6,
      limits: [atLeast('retentionPct', 70), atLeast('lightFastness', 7)],
      reason: 'Open daylight with its ultraviolet part fades all but the fastest colourants.',
    },
  ],
};
