import type { Layer } from '../../../shared-lib/material/layer.ts';
import { lotDoubt } from '../../../shared-lib/material/lot-doubt.ts';
import type { LotLine } from '../../../shared-lib/notebook/material-views.ts';
import type { MaterialView } from '../../../shared-lib/notebook/views.ts';
import type { LotView } from '../../../shared-lib/notebook/lot-view.ts';
import type { NotebookStore } from '../../store/notebook-store.ts';
import { groupBy } from './group-by.ts';
import { listLotLines, lotLinesOf } from './lots.ts';

const LOTS = `SELECT lot.lotId, lot.materialId, material.kind, material.name AS material, material.supplier, lot.code, lot.receivedOn, lot.note
  FROM lot JOIN material USING (materialId)`;

const MATERIALS = 'SELECT materialId, kind, name, supplier, description, layers FROM material';
type StoredMaterial = Omit<MaterialView, 'lots' | 'layers'> & { layers: string };

/** By kind and name, each with its lots, the newest first. @param day on which they are looked at */
export function listMaterials(store: NotebookStore, day: string): MaterialView[] {
  const lots = groupBy(listLotLines(store), (lot) => lot.materialId);
  return store.all<StoredMaterial>(`${MATERIALS} ORDER BY kind, name, addedSeq`).map((material) => viewOf(material, lots.get(material.materialId) ?? [], day));
}

export function findMaterial(store: NotebookStore, materialId: string, day: string): MaterialView | undefined {
  const material = store.one<StoredMaterial>(`${MATERIALS} WHERE materialId = ?`, [materialId]);
  return material && viewOf(material, lotLinesOf(store, materialId), day);
}

/** Id of the material of this name and supplier. */
export function materialNamed(store: NotebookStore, name: string, supplier: string): string | undefined {
  return store.one<{ materialId: string }>('SELECT materialId FROM material WHERE name = ? AND supplier = ?', [name, supplier])?.materialId;
}

function viewOf({ layers, ...material }: StoredMaterial, lots: LotLine[], day: string): MaterialView {
  return { ...material, layers: JSON.parse(layers) as Layer[], lots: lots.map((lot) => ({ ...lot, doubt: lotDoubt(lot, day) })) };
}

/** In the order in which they were put down for the press approval. */
export function lotsOfApproval(store: NotebookStore, approvalId: string): LotView[] {
  return store.all<LotView>(`${LOTS} JOIN approval_lot USING (lotId) WHERE approval_lot.approvalId = ? ORDER BY approval_lot.place`, [approvalId]);
}

/** In the order in which they were put down for the sample. */
export function lotsOfSample(store: NotebookStore, sampleId: string): LotView[] {
  return store.all<LotView>(`${LOTS} JOIN sample_lot USING (lotId) WHERE sample_lot.sampleId = ? ORDER BY sample_lot.place`, [sampleId]);
}
