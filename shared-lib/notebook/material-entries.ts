import { z } from 'zod';
import { layerSchema, MOST_LAYERS } from '../material/layer.ts';

const id = z.string().min(1).max(64);
const shortText = z.string().max(200);
const longText = z.string().max(20_000);
const reason = longText.min(1);
const day = z.iso.date();
const parts = z.array(id).max(50);

export const layersSchema = z.array(layerSchema).max(MOST_LAYERS);

/** What is said of a lot besides its code, material and day of receipt. */
export const lotDetailsSchema = z.strictObject({
  /** The last day on which it is to be used. */
  expiresOn: day.nullable(),
  /** Of a film. */
  treatedOn: day.nullable(),
  /** Of a film as it lies on the roll. */
  treatedSide: z.enum(['outside', 'inside', 'both', 'none']).nullable(),
  /** As measured or certified for this lot. */
  thicknessUm: z.number().positive().max(5000).nullable(),
});

/** Nothing said. */
export const noLotDetails: LotDetails = { expiresOn: null, treatedOn: null, treatedSide: null, thicknessUm: null };

const materialFields = z.strictObject({ name: shortText.min(1), supplier: shortText, description: longText, layers: layersSchema });
const lotFields = lotDetailsSchema.extend({ code: shortText.min(1), receivedOn: day.nullable(), note: longText });

/** Entries about materials and lots beyond their first. A description gives its reason where it takes the place of something said. */
export const materialEntryBodies = {
  /** What a material is said to be: before and since. */
  'material.described': z.strictObject({ materialId: id, before: materialFields, after: materialFields, reason: longText }),
  'lot.described': z.strictObject({ lotId: id, before: lotFields, after: lotFields, reason: longText }),
  /** The lots that went into a lot, all of them. The reason is asked for where one is left out. */
  'lot.madeFrom': z.strictObject({ lotId: id, before: parts, lotIds: parts, reason: longText }),
  /** Not to be used any more; it stays with what was made from it. */
  'lot.retired': z.strictObject({ lotId: id, reason, /** Where its return is undone: why it was retired before. */ before: longText.optional() }),
  'lot.returned': z.strictObject({ lotId: id, reason }),
} as const;

export type LotDetails = z.output<typeof lotDetailsSchema>;
export type LotFields = z.output<typeof lotFields>;
export type MaterialFields = z.output<typeof materialFields>;
