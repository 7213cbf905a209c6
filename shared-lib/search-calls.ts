import { z } from 'zod';
import { call } from './api-call.ts';
import type { SearchView } from './notebook/search-views.ts';

/** The call that looks through everything in the notebook. */
export const searchCalls = {
  /** Words, each the beginning of one in an entry, or anywhere in what else a thing says; `limit`: of each kind. */
  'search.find': call<SearchView>()(z.strictObject({ search: z.string().trim().max(200), limit: z.number().int().min(1).max(100).default(6) })),
} as const;
