import { atLeast, atMost, dayAfterPrinting, daysAfterPrinting, type StressRule } from '../stress-rule.ts';

const weathered = 'after 768 h of xenon daylight with water spray';

export const weatherRule: StressRule = {
  stress: 'weather',
  proposals: [
    {
      methodId: 'tape-adhesion',
      moment: daysAfterPrinting(35),
      preparation: weathered,
      conditions: { moment: 'print' },
      replicates: 5,
      limits: [atLeast('retainedPct', 90)],
      reason: 'Sun breaks down the binder where it meets the film, and rain lifts it off.',
    },
    {
      methodId: 'gloss',
      moment: daysAfterPrinting(35),
      preparation: weathered,
      conditions: { angleDeg: '60', treatment: weathered },
      replicates: 5,
      limits: [atLeast('retentionPct', 50)],
      reason: 'A binder that breaks down chalks and loses its gloss before its colour.',
    },
    {
      methodId: 'crinkle',
      moment: daysAfterPrinting(35),
      preparation: weathered,
      conditions: { flexes: 10 },
      replicates: 3,
      limits: [atLeast('grade', 3)],
      reason: 'Weathered ink is brittle and breaks where the sack is folded.',
    },
    {
      methodId: 'blocking',
      moment: dayAfterPrinting,
      preparation: 'print against print, hot',
      conditions: { pressedBy: 'clamp', faces: 'print-print', pressureKPa: 20, temperatureC: 60, hours: 24 },
      replicates: 5,
      limits: [atMost('worstGrade', 1)],
      reason: 'Dark print in the sun grows far hotter than the air while it lies under load.',
    },
  ],
};
