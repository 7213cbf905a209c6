import { z } from 'zod';
import { call } from './api-call.ts';
import { materialKindSchema } from './notebook/entry.ts';
import { lotDetailsSchema } from './notebook/material-entries.ts';
import type { LotPage, RecallView } from './notebook/material-views.ts';
import type { MaterialView } from './notebook/views.ts';
import type { LotView } from './notebook/lot-view.ts';

const id = z.string().min(1).max(64);
const line = z.string().trim().max(200);
const text = z.string().max(20_000);
const day = z.iso.date().nullable();
const reason = text.default('');
/** `structure`: as typed, 'PET 12 / ink / adhesive / PE 60'. */
const material = { name: line.min(1), supplier: line, description: text, structure: z.string().max(2000).default('') };
/** `thickness`: as typed, in µm. */
const lot = {
  code: line.min(1),
  receivedOn: day,
  note: text,
  expiresOn: day.default(null),
  treatedOn: day.default(null),
  treatedSide: lotDetailsSchema.shape.treatedSide.default(null),
  thickness: line.default(''),
};

/** The calls about materials and lots. */
export const materialCalls = {
  'materials.list': call<MaterialView[]>()(z.strictObject({})),
  'material.get': call<MaterialView>()(z.strictObject({ materialId: id })),
  'material.add': call<MaterialView>()(z.strictObject({ kind: materialKindSchema, ...material })),
  /** Says a material anew; a reason is asked for where that takes the place of something said. So are the calls below that take a reason. */
  'material.describe': call<MaterialView>()(z.strictObject({ materialId: id, ...material, reason })),
  'lot.add': call<LotView>()(z.strictObject({ materialId: id, ...lot })),
  'lot.get': call<LotPage>()(z.strictObject({ lotId: id })),
  'lot.describe': call<LotPage>()(z.strictObject({ lotId: id, ...lot, reason })),
  /** All the lots that went into it. Circular genealogy is refused, and the loop named. */
  'lot.makeFrom': call<LotPage>()(z.strictObject({ lotId: id, lotIds: z.array(id).max(50), reason })),
  'lot.retire': call<LotPage>()(z.strictObject({ lotId: id, reason })),
  'lot.return': call<LotPage>()(z.strictObject({ lotId: id, reason })),
  'lot.recall': call<RecallView>()(z.strictObject({ lotId: id })),
  'lot.recallCsv': call<{ fileName: string; bytes: string }>()(z.strictObject({ lotId: id })),
} as const;
