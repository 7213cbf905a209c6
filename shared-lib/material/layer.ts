import { z } from 'zod';

/** One layer of a film or laminate. */
export const layerSchema = z.strictObject({
  kind: z.enum(['film', 'ink', 'adhesive', 'coating']),
  /** 'PET', 'ink R0', 'adhesive' */
  name: z.string().min(1).max(100),
  /** `null`: not said. */
  thicknessUm: z.number().positive().max(5000).nullable(),
  /** Mass per area of ink, adhesive or coating in g/m²; `null`: not said. */
  coatGsm: z.number().positive().max(1000).nullable(),
  /** Which side of a film was treated; `null`: not said. */
  treated: z.enum(['outer', 'inner', 'both']).nullable(),
});

export type Layer = z.output<typeof layerSchema>;
export type LayerSide = 'outer' | 'inner' | 'both';

/** More is no packaging film, and could not be drawn. */
export const MOST_LAYERS = 30;
