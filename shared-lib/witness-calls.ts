import { z } from 'zod';
import { call } from './api-call.ts';
import type { BenchSheetView } from './notebook/views.ts';
import type { PageOfWork, UndoneView } from './notebook/witness-views.ts';
import { signing } from './person-calls.ts';

const id = z.string().min(1).max(64);
const seq = z.number().int().positive();

/** Which page of work: a test, what one person did between two moments, or entries from one number to another. */
const page = z.union([
  z.strictObject({ testId: id }),
  z.strictObject({ by: id, from: z.iso.datetime(), to: z.iso.datetime() }),
  z.strictObject({ fromSeq: seq, toSeq: seq }),
]);

/** The calls about reading another's work and about taking back one's own. */
export const witnessCalls = {
  'work.page': call<PageOfWork>()(z.strictObject({ page })),
  /** `toSeq` and `chainHash` are those of the page that was read: what came since is not signed unseen. */
  'work.witness': call<PageOfWork>()(z.strictObject({ page, toSeq: seq, chainHash: z.string().length(64), ...signing })),
  'test.withdraw': call<BenchSheetView>()(z.strictObject({ testId: id, reason: z.string().max(20_000) })),
  /** Takes back the last action of the person at the bench since the notebook was opened, by further entries. */
  'undo.last': call<UndoneView>()(z.strictObject({})),
} as const;

export type PageWanted = z.output<typeof page>;
