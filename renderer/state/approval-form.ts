import type { AppState } from './app-state.svelte.ts';

/** The form of a new press approval. */
export function approvalForm(app: AppState) {
  return app.begun.form('approval.draft', () => ({ job: '', product: '', customer: '', pressRun: '', planId: '', lotIds: [] as string[], sampleIds: [] as string[], note: '', replacesReason: '' }));
}
