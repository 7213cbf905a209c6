import type { ParsedInput } from '../../../shared-lib/api.ts';
import { InputError } from '../../../shared-lib/calculation/input-error.ts';
import type { LotView, MaterialView } from '../../../shared-lib/notebook/views.ts';
import { listMaterials } from '../queries/materials.ts';
import { Refusal } from '../refusal.ts';
import type { Workplace } from '../workplace.ts';

export function addMaterial(workplace: Workplace, input: ParsedInput<'material.add'>): MaterialView {
  const { notebook } = workplace;
  const same = listMaterials(notebook.store).find(({ name, supplier }) => name === input.name && supplier === input.supplier);
  if (same) throw new InputError('name', input.name, `${input.name}${input.supplier && ` of ${input.supplier}`} is already in the notebook; add a lot to it.`);
  const material = { materialId: workplace.newId(), ...input };
  notebook.append([{ kind: 'material.added', body: material }]);
  return { ...material, lots: [] };
}

export function addLot(workplace: Workplace, input: ParsedInput<'lot.add'>): LotView {
  const { notebook } = workplace;
  const material = listMaterials(notebook.store).find(({ materialId }) => materialId === input.materialId);
  if (!material) throw new Refusal('not-found', 'This material is not in the notebook.');
  if (material.lots.some((lot) => lot.code === input.code)) {
    throw new InputError('code', input.code, `${material.name} already has a lot ${input.code}.`);
  }
  const lot = { lotId: workplace.newId(), ...input };
  notebook.append([{ kind: 'lot.added', body: lot }]);
  return { ...lot, kind: material.kind, material: material.name, supplier: material.supplier };
}
