import { z } from 'zod';
import { defineCalculation } from '../calculation/calculation.ts';
import type { Flag, ResultValue } from '../calculation/result.ts';
import { valueWithoutInterval } from '../calculation/value-without-interval.ts';
import { replicatesFigure } from '../figure/replicates-figure.ts';
import { levelSchema } from '../statistics/level.ts';
import { meanOfReplicates } from '../statistics/mean-of-replicates.ts';
import { summarise } from '../statistics/summarise.ts';
import { ratioOfMeansPct } from './ratio-of-means.ts';

const glossUnits = z.number().min(0).max(2000);

/** 45° is the film geometry of ASTM D2457. */
const glossAngles = [20, 45, 60, 85] as const;

const input = z.strictObject({
  angleDeg: z.literal(glossAngles),
  values: z.array(glossUnits).min(1).max(1000),
  /** Mean at 60°, by which another angle was chosen. */
  gloss60: glossUnits.optional(),
  /** After rubbing, light or heat, at the same angle. */
  after: z.array(glossUnits).min(1).max(1000).optional(),
  level: levelSchema,
});

export const glossCalculation = defineCalculation({
  id: 'gloss',
  version: '1',
  title: 'Specular gloss',
  input,
  compute: ({ angleDeg, values, gloss60, after, level }) => {
    const gloss = meanOfReplicates(values, 'GU', level, 0);
    const spread = valueWithoutInterval(summarise(values).standardDeviation, 'GU', values.length);
    const retentionPct: ResultValue = after && gloss.value! > 0 ? ratioOfMeansPct(values, after, level) : valueWithoutInterval(null, '%', 0);
    const flags = angleFlags(angleDeg, gloss.value!, gloss60);
    return {
      results: {
        gloss,
        spread,
        glossAfter: after ? meanOfReplicates(after, 'GU', level, 0) : valueWithoutInterval(null, 'GU', 0),
        retentionPct,
      },
      table: Array.from({ length: Math.max(values.length, after?.length ?? 0) }, (_, index) => ({ reading: index + 1, gloss: values[index] ?? null, glossAfter: after?.[index] ?? null })),
      flags,
      notes: [
        `Gloss at ${angleDeg}°; values at different angles do not compare.`,
        ...(angleDeg === 20 || angleDeg === 85) && gloss60 === undefined ? ['The reading at 60° that this angle was chosen by is not given.'] : [],
        ...(after && retentionPct.value === null ? ['No retention: there was no gloss to begin with.'] : []),
        ...(values.length === 1 ? ['One reading gives no interval.'] : []),
      ],
      figures: [
        replicatesFigure('gloss-readings', `Gloss at ${angleDeg}°`, 'GU', values, gloss),
        ...(after ? [replicatesFigure('gloss-after-readings', `Gloss at ${angleDeg}° after the treatment`, 'GU', after, meanOfReplicates(after, 'GU', level, 0))] : []),
      ],
    };
  },
  columns: [
    { key: 'reading', title: 'Reading' },
    { key: 'gloss', title: 'Gloss', unit: 'GU', decimals: 1 },
    { key: 'glossAfter', title: 'Gloss after', unit: 'GU', decimals: 1 },
  ],
  cautions: [],
  sources: ['ISO 2813; ASTM D523 (angles, from memory)', 'ASTM D2457 (45°, film, from memory)'],
});

/** ISO 2813: begin at 60°; above 70 GU there go to 20°, below 10 GU to 85°. */
function angleFlags(angleDeg: (typeof glossAngles)[number], gloss: number, gloss60: number | undefined): Flag[] {
  const at60 = angleDeg === 60 ? gloss : gloss60;
  if (at60 === undefined || angleDeg === 45) return [];
  const better = at60 > 70 ? 20 : at60 < 10 ? 85 : 60;
  if (better === angleDeg) return [];
  return [{ code: 'angle-choice', where: 'angleDeg', text: `At 60° this surface has ${at60.toFixed(1)} GU; ISO 2813 then tells surfaces apart better at ${better}° than at ${angleDeg}°.` }];
}
