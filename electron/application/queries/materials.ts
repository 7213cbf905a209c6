import type { Layer } from '../../../shared-lib/material/layer.ts';
import { lotDoubt } from '../../../shared-lib/material/lot-doubt.ts';
import type { MaterialView } from '../../../shared-lib/notebook/views.ts';
import type { LotView } from '../../../shared-lib/notebook/lot-view.ts';
import type { NotebookStore } from '../../store/notebook-store.ts';
import { groupBy } from './group-by.ts';
import { listLotLines } from './lots.ts';

const LOTS = `SELECT lot.lotId, lot.materialId, material.kind, material.name AS material, material.supplier, lot.code, lot.receivedOn, lot.note
  FROM lot JOIN material USING (materialId)`;

/** By kind and name, each with its lots, the newest first. @param day on which they are looked at */
export function listMaterials(store: NotebookStore, day: string): MaterialView[] {
  const lots = groupBy(listLotLines(store).map((lot) => ({ ...lot, doubt: lotDoubt(lot, day) })), (lot) => lot.materialId);
  return store
    .all<Omit<MaterialView, 'lots' | 'layers'> & { layers: string }>('SELECT materialId, kind, name, supplier, description, layers FROM material ORDER BY kind, name, addedSeq', [])
    .map(({ layers, ...material }) => ({ ...material, layers: JSON.parse(layers) as Layer[], lots: lots.get(material.materialId) ?? [] }));
}

export function listLots(store: NotebookStore): LotView[] {
  return store.all<LotView>(`${LOTS} ORDER BY lot.addedSeq DESC`, []);
}

/** In the order in which they were put down for the sample. */
export function lotsOfSample(store: NotebookStore, sampleId: string): LotView[] {
  return store.all<LotView>(`${LOTS} JOIN sample_lot USING (lotId) WHERE sample_lot.sampleId = ? ORDER BY sample_lot.place`, [sampleId]);
}
