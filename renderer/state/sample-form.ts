import type { SampleView } from '../../shared-lib/notebook/views.ts';
import type { AppState } from './app-state.svelte.ts';

/** The form of a new sample, or of one that is said anew. */
export function sampleForm(app: AppState, sample?: SampleView) {
  const typed = (value: number | null | undefined) => (value == null ? '' : String(value));
  return app.begun.form(sample ? `sample.change ${sample.sampleId}` : 'sample.add', () => ({
    code: sample?.code ?? '',
    product: sample?.product ?? '',
    job: sample?.job ?? '',
    roll: sample?.roll ?? '',
    customer: sample?.customer ?? '',
    across: typed(sample?.acrossMm),
    along: typed(sample?.alongM),
    keptAt: sample?.keptAt ?? '',
    retainedUntil: sample?.retainedUntil ?? '',
    note: sample?.note ?? '',
    lotIds: sample?.lots.map(({ lotId }) => lotId) ?? ([] as string[]),
    reason: '',
  }));
}

export type SampleForm = ReturnType<typeof sampleForm>;

/** As the calls take it. */
export function sampleSaid({ reason: _apart, retainedUntil, ...values }: SampleForm['values']) {
  return { ...values, retainedUntil: retainedUntil || null };
}
