import type { ParsedInput } from '../../../shared-lib/api.ts';
import { InputError } from '../../../shared-lib/calculation/input-error.ts';
import { readStructure } from '../../../shared-lib/material/read-structure.ts';
import type { MaterialFields } from '../../../shared-lib/notebook/material-entries.ts';
import type { MaterialView } from '../../../shared-lib/notebook/views.ts';
import { dayOf } from '../day-of.ts';
import { findMaterial, listMaterials, materialNamed } from '../queries/materials.ts';
import { Refusal } from '../refusal.ts';
import { requireChange } from '../require-change.ts';
import type { Workplace } from '../workplace.ts';

export function materialsList(workplace: Workplace): MaterialView[] {
  return listMaterials(workplace.notebook.store, dayOf(workplace.now()));
}

/** @throws Refusal when there is no such material */
export function getMaterial(workplace: Workplace, { materialId }: { materialId: string }): MaterialView {
  const material = findMaterial(workplace.notebook.store, materialId, dayOf(workplace.now()));
  if (!material) throw new Refusal('not-found', 'This material is not in the notebook.');
  return material;
}

export function addMaterial(workplace: Workplace, { structure, ...input }: ParsedInput<'material.add'>): MaterialView {
  requireOwnName(workplace, input, '');
  const layers = readStructure(structure);
  const materialId = workplace.newId();
  workplace.notebook.append([{ kind: 'material.added', body: { materialId, ...input, ...(layers.length > 0 ? { layers } : {}) } }]);
  return getMaterial(workplace, { materialId });
}

/** Says a material anew. */
export function describeMaterial(workplace: Workplace, { materialId, structure, reason, ...input }: ParsedInput<'material.describe'>): MaterialView {
  const { name, supplier, description, layers } = getMaterial(workplace, { materialId });
  requireOwnName(workplace, input, materialId);
  const before: MaterialFields = { name, supplier, description, layers };
  const after: MaterialFields = { ...input, layers: readStructure(structure) };
  workplace.notebook.append([{ kind: 'material.described', body: { materialId, before, after, reason: requireChange(before, after, reason) } }]);
  return getMaterial(workplace, { materialId });
}

function requireOwnName(workplace: Workplace, { name, supplier }: { name: string; supplier: string }, materialId: string): void {
  const same = materialNamed(workplace.notebook.store, name, supplier);
  if (same !== undefined && same !== materialId) throw new InputError('name', name, `${name}${supplier && ` of ${supplier}`} is already in the notebook; add a lot to it.`);
}
