import { z } from 'zod';
import { call } from './api-call.ts';
import type { MergePreview, MergeView } from './notebook/merge-views.ts';

const id = z.string().min(1).max(64);

/** A notebook that is known here, or a file that is chosen now (base64). */
const otherNotebook = z.union([
  z.strictObject({ handle: z.string().min(1).max(4096) }),
  z.strictObject({ name: z.string().trim().min(1).max(200), bytes: z.string().max(36_000_000) }),
]);

/** The calls that bring notebooks of several benches together. */
export const mergeCalls = {
  'merge.preview': call<MergePreview>()(z.strictObject({ other: otherNotebook })),
  /** `null`: there was nothing new. */
  'merge.make': call<MergeView | null>()(z.strictObject({ other: otherNotebook })),
  'merges.list': call<MergeView[]>()(z.strictObject({})),
  /** What was taken stands. */
  'conflict.settle': call<MergeView[]>()(z.strictObject({ mergeId: id, here: id, there: id, reason: z.string().max(20_000) })),
  /** The word that gave way is said anew, as a correction with this reason and the merge named in it. */
  'conflict.takeOther': call<MergeView[]>()(z.strictObject({ mergeId: id, here: id, there: id, reason: z.string().max(20_000) })),
} as const;
