import { z } from 'zod';
import { call } from './api-call.ts';
import { referenceFields, spectraReadingSchema, toleranceFields } from './notebook/colour-entries.ts';
import type { ItemChoice, ReferenceView, SpectraPreview } from './notebook/colour-views.ts';
import { itemsOfNotebook } from './method/method.ts';
import type { BenchSheetView } from './notebook/views.ts';

const id = z.string().min(1).max(64);
const line = z.string().trim().max(200);
const text = z.string().max(20_000);
/** File content as base64, at most 24 MB of it. */
const fileBytes = z.string().max(32_000_000);
const file = { name: line, bytes: fileBytes, reading: spectraReadingSchema };

/** The calls of reference colours and of spectra. */
export const colourCalls = {
  'references.list': call<ReferenceView[]>()(z.strictObject({})),
  /** The spectrum typed, or from a file, or else L*, a*, b*. `replaces`: as a new edition of that one, whose tolerances it takes over. */
  'reference.add': call<ReferenceView>()(
    z.strictObject({
      ...referenceFields,
      name: line.min(1),
      spectrum: text,
      file: z.strictObject({ ...file, place: z.number().int().nonnegative() }).nullable().default(null),
      replaces: z.strictObject({ referenceId: id, reason: text.min(1) }).nullable().default(null),
    }),
  ),
  'tolerance.set': call<ReferenceView>()(z.strictObject({ referenceId: id, ...toleranceFields, customer: line.min(1), reason: text.default('') })),
  'reference.retire': call<ReferenceView>()(z.strictObject({ referenceId: id, reason: text.default('') })),
  'reference.return': call<ReferenceView>()(z.strictObject({ referenceId: id, reason: text.default('') })),
  /** What an item field of a bench sheet can name. */
  'items.find': call<ItemChoice[]>()(z.strictObject({ of: z.enum(itemsOfNotebook), search: line.default(''), /** For which; those that serve it come first. */ methodId: z.string().max(100).default('') })),

  'spectra.preview': call<SpectraPreview>()(z.strictObject({ name: line, bytes: fileBytes, reading: spectraReadingSchema.partial() })),
  /** Reads spectra of a file into a cell and the rows below it, in their order; `row` is '' for a condition, which takes one. */
  'spectrum.read': call<BenchSheetView>()(
    z.strictObject({ testId: id, row: z.string().max(20), key: z.string().max(100), ...file, places: z.array(z.number().int().nonnegative()).min(1).max(1000), reason: text.default('') }),
  ),
} as const;
