import { z } from 'zod';
import { call } from './api-call.ts';
import type { MergePreview, MergeView } from './notebook/merge-views.ts';

const id = z.string().min(1).max(64);

/** A notebook that is known here, or one that a person chose: see `Client.handOver`. */
const otherNotebook = z.strictObject({ handle: z.string().min(1).max(4096) });

/** The calls that bring notebooks of several benches together. */
export const mergeCalls = {
  'merge.preview': call<MergePreview>()(otherNotebook),
  /** `null`: there was nothing new. */
  'merge.make': call<MergeView | null>()(
    otherNotebook.extend({
      /** A person has said that it belongs to this laboratory; needed where both have no entry in common. */
      belongsHere: z.boolean().default(false),
    }),
  ),
  'merges.list': call<MergeView[]>()(z.strictObject({})),
  /** What was taken stands. */
  'conflict.settle': call<MergeView[]>()(z.strictObject({ mergeId: id, here: id, there: id, reason: z.string().max(20_000) })),
  /** The word that gave way is said anew, as a correction with this reason and the merge named in it. */
  'conflict.takeOther': call<MergeView[]>()(z.strictObject({ mergeId: id, here: id, there: id, reason: z.string().max(20_000) })),
} as const;
