import { z } from 'zod';
import { call } from './api-call.ts';
import { dueKinds, type TodayView } from './notebook/today-view.ts';

const most = (limit: number) => z.number().int().min(1).max(limit).default(20);

/** The call about what is to be done. */
export const todayCalls = {
  /** `of`: only what is due of one kind; '' all. The others: how many lines of each at most. */
  'today.get': call<TodayView>()(z.strictObject({ of: z.enum(['', ...dueKinds]).default(''), mostOverdue: most(2000), mostNext: most(2000), mostRunning: most(200), mostOutdated: most(200) })),
} as const;
