import type { LotLine } from '../../shared-lib/notebook/material-views.ts';
import type { AppState } from './app-state.svelte.ts';

/** The form of a new lot, or of one that is said anew. */
export function lotForm(app: AppState, name: string, lot?: LotLine) {
  return app.begun.form(name, () => ({
    code: lot?.code ?? '',
    receivedOn: lot?.receivedOn ?? '',
    expiresOn: lot?.expiresOn ?? '',
    treatedOn: lot?.treatedOn ?? '',
    treatedSide: lot?.treatedSide ?? ('' as const),
    thickness: lot?.thicknessUm == null ? '' : String(lot.thicknessUm),
    note: lot?.note ?? '',
    reason: '',
  }));
}

export type LotForm = ReturnType<typeof lotForm>;

/** As the calls take it: days and sides that were not said are `null`. */
export function lotSaid({ code, receivedOn, expiresOn, treatedOn, treatedSide, thickness, note }: LotForm['values']) {
  return { code, receivedOn: receivedOn || null, expiresOn: expiresOn || null, treatedOn: treatedOn || null, treatedSide: treatedSide || null, thickness, note };
}
