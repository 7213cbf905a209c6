import type { LotView, MaterialView } from '../../../shared-lib/notebook/views.ts';
import type { NotebookStore } from '../../store/notebook-store.ts';
import { groupBy } from './group-by.ts';

const LOTS = `SELECT lot.lotId, lot.materialId, material.kind, material.name AS material, material.supplier, lot.code, lot.receivedOn, lot.note
  FROM lot JOIN material USING (materialId)`;

/** By kind and name, each with its lots, the newest first. */
export function listMaterials(store: NotebookStore): MaterialView[] {
  const lots = groupBy(listLots(store), (lot) => lot.materialId);
  return store
    .all<Omit<MaterialView, 'lots'>>('SELECT materialId, kind, name, supplier, description FROM material ORDER BY kind, name, addedSeq', [])
    .map((material) => ({ ...material, lots: lots.get(material.materialId) ?? [] }));
}

export function listLots(store: NotebookStore): LotView[] {
  return store.all<LotView>(`${LOTS} ORDER BY lot.addedSeq DESC`, []);
}

/** In the order in which they were put down for the sample. */
export function lotsOfSample(store: NotebookStore, sampleId: string): LotView[] {
  return store.all<LotView>(`${LOTS} JOIN sample_lot USING (lotId) WHERE sample_lot.sampleId = ? ORDER BY sample_lot.place`, [sampleId]);
}
