import type { AppState } from './app-state.svelte.ts';

/** The form of a new sample. */
export function sampleForm(app: AppState) {
  return app.form('sample.add', () => ({ code: '', product: '', job: '', roll: '', note: '', lotIds: [] as string[] }));
}

export type SampleForm = ReturnType<typeof sampleForm>;
