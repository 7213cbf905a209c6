import { z } from 'zod';
import { call } from './api-call.ts';

/** The calls about what is typed and not yet entered. It is kept beside the settings, and comes back after a crash. */
export const draftCalls = {
  'drafts.get': call<{ drafts: Record<string, string> }>()(z.strictObject({})),
  /** `notebook`: its handle, for another may be open by now; `content`: JSON; `null` once it was entered or taken back. */
  'draft.keep': call<Record<string, never>>()(z.strictObject({ notebook: z.string().max(4096), name: z.string().min(1).max(300), content: z.string().max(1_000_000).nullable() })),
} as const;
