import type { AppState } from './app-state.svelte.ts';
import type { Form } from './form.svelte.ts';

export interface RecordFilter {
  kind: string;
  by: string;
  search: string;
  /** Local days such as 2026-03-09, or ''; both count. */
  from: string;
  until: string;
  /** Entries before the first one shown. */
  offset: number;
}

/** What the Record is narrowed to, as it was left; of one test, or `null` of the whole record. */
export function recordFilter(app: AppState, testId: string | null): Form<RecordFilter> {
  return app.begun.form(`record.filter ${testId ?? ''}`, () => ({ kind: '', by: '', search: '', from: '', until: '', offset: 0 }), false);
}
