import type { AppState } from './app-state.svelte.ts';
import type { Form } from './form.svelte.ts';

export interface RecordFilter {
  kind: string;
  by: string;
  search: string;
  limit: number;
}

/** What the Record is narrowed to, as it was left; of one test, or `null` of the whole record. */
export function recordFilter(app: AppState, testId: string | null): Form<RecordFilter> {
  return app.form(`record.filter ${testId ?? ''}`, () => ({ kind: '', by: '', search: '', limit: 100 }), false);
}
