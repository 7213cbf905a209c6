import { structureText } from '../../shared-lib/material/structure-text.ts';
import type { MaterialKind } from '../../shared-lib/notebook/entry.ts';
import type { MaterialView } from '../../shared-lib/notebook/views.ts';
import type { AppState } from './app-state.svelte.ts';

/** The form of a new material, or of one that is said anew. */
export function materialForm(app: AppState, name: string, material?: MaterialView) {
  return app.begun.form(name, () => ({
    kind: (material?.kind ?? 'film') as MaterialKind,
    name: material?.name ?? '',
    supplier: material?.supplier ?? '',
    description: material?.description ?? '',
    structure: material ? structureText(material.layers) : '',
    reason: '',
  }));
}

export type MaterialForm = ReturnType<typeof materialForm>;
