import { z } from 'zod';
import { call } from './api-call.ts';
import type { SampleLine, SampleView } from './notebook/views.ts';
import { labelSizes } from './report/label-sheet.ts';

const id = z.string().min(1).max(64);
const line = z.string().trim().max(200);
const text = z.string().max(20_000);
const reason = text.default('');
/** `across` and `along`: as typed, in mm and m. */
const sample = {
  code: line.min(1),
  product: line,
  job: line,
  roll: line,
  note: text,
  lotIds: z.array(id).max(50),
  customer: line.default(''),
  across: line.default(''),
  along: line.default(''),
  keptAt: line.default(''),
  retainedUntil: z.iso.date().nullable().default(null),
};

/** The calls about samples. */
export const sampleCalls = {
  /** `search` may be what a label's code holds. */
  'samples.list': call<{ total: number; samples: SampleLine[] }>()(
    z.strictObject({ search: line.default(''), offset: z.number().int().min(0).default(0), limit: z.number().int().min(1).max(500).default(200) }),
  ),
  'sample.get': call<SampleView>()(z.strictObject({ sampleId: id })),
  'sample.add': call<SampleView>()(z.strictObject(sample)),
  'sample.change': call<SampleView>()(z.strictObject({ sampleId: id, ...sample, reason })),
  /** Disposed of; its tests stay. */
  'sample.retire': call<SampleView>()(z.strictObject({ sampleId: id, reason })),
  'sample.return': call<SampleView>()(z.strictObject({ sampleId: id, reason })),
  /** A PDF; `skip`: labels of the first sheet that are used up. */
  'samples.labels': call<{ fileName: string; bytes: string }>()(
    z.strictObject({ sampleIds: z.array(id).min(1).max(500), size: z.enum(labelSizes), skip: z.number().int().min(0).max(23).default(0) }),
  ),
} as const;
