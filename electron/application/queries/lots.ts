import { lotDoubt, type LotTrust } from '../../../shared-lib/material/lot-doubt.ts';
import { lotTree } from '../../../shared-lib/material/genealogy.ts';
import type { LotLine, LotPlaceView } from '../../../shared-lib/notebook/material-views.ts';
import type { NotebookStore } from '../../store/notebook-store.ts';
import { LOT_IS_LISTED } from './holds-something.ts';

const LOT_LINES = `SELECT lot.lotId, lot.materialId, material.kind, material.name AS material, material.supplier, lot.code, lot.receivedOn, lot.note,
    lot.expiresOn, lot.treatedOn, lot.treatedSide, lot.thicknessUm, lot.retiredAt, lot.retiredReason
  FROM lot JOIN material USING (materialId)`;

/** The newest first, without what was undone and holds nothing. */
export function listLotLines(store: NotebookStore): LotLine[] {
  return store.all<LotLine>(`${LOT_LINES} WHERE ${LOT_IS_LISTED} ORDER BY lot.addedSeq DESC`);
}

/** The same of one material. */
export function lotLinesOf(store: NotebookStore, materialId: string): LotLine[] {
  return store.all<LotLine>(`${LOT_LINES} WHERE materialId = ? AND ${LOT_IS_LISTED} ORDER BY lot.addedSeq DESC`, [materialId]);
}

export function findLot(store: NotebookStore, lotId: string): LotLine | undefined {
  return store.one<LotLine>(`${LOT_LINES} WHERE lotId = ?`, [lotId]);
}

export function findLotByCode(store: NotebookStore, materialId: string, code: string): LotLine | undefined {
  return store.one<LotLine>(`${LOT_LINES} WHERE materialId = ? AND lot.code = ?`, [materialId, code]);
}

/** What went into a lot directly, in the order in which it was put down. */
export function partIdsOf(store: NotebookStore, lotId: string): string[] {
  return store.all<{ partId: string }>('SELECT partId FROM lot_part WHERE lotId = ? ORDER BY place', [lotId]).map(({ partId }) => partId);
}

/** What was made from a lot directly. */
export function lotIdsMadeFrom(store: NotebookStore, partId: string): string[] {
  return store.all<{ lotId: string }>('SELECT lotId FROM lot_part JOIN lot USING (lotId) WHERE partId = ? ORDER BY lot.addedSeq', [partId]).map(({ lotId }) => lotId);
}

/** 'PET 12 µm, lot OV-2601-031' */
export function lotName(store: NotebookStore, lotId: string): string {
  const lot = findLot(store, lotId);
  return lot ? `${lot.material}, lot ${lot.code}` : lotId;
}

/** What went into a lot, or what was made from it, all the way. @param day on which they are looked at */
export function lotPlaces(store: NotebookStore, lotId: string, way: 'made from' | 'went into', day: string): LotPlaceView[] {
  return lotTree(lotId, (from) => (way === 'made from' ? partIdsOf(store, from) : lotIdsMadeFrom(store, from))).map(({ lotId: placed, ...place }) => placeView(store, placed, place, day));
}

/** The lots that a sample is made of with all that went into them; a lot named for the sample that is a part of another is listed there. */
export function lotPlacesOfSample(store: NotebookStore, sampleId: string, day: string): LotPlaceView[] {
  const named = store.all<{ lotId: string }>('SELECT lotId FROM sample_lot WHERE sampleId = ? ORDER BY place', [sampleId]).map(({ lotId }) => lotId);
  const below = new Map(named.map((lotId) => [lotId, lotTree(lotId, (from) => partIdsOf(store, from))]));
  const isPart = (lotId: string) => named.some((other) => other !== lotId && below.get(other)!.some((place) => place.lotId === lotId));
  const tops = named.filter((lotId) => !isPart(lotId));
  return (tops.length > 0 ? tops : named).flatMap((lotId) => [
    placeView(store, lotId, { depth: 0, again: false }, day),
    ...below.get(lotId)!.map(({ lotId: part, depth, again }) => placeView(store, part, { depth: depth + 1, again }, day)),
  ]);
}

/** Retired or expired lots that a sample is made of, however far down. @param day when the sample was made */
export function doubtfulLotsOfSample(store: NotebookStore, sampleId: string, day: string): { lotId: string; name: string; doubt: string }[] {
  return store
    .all<LotTrust & { lotId: string; name: string }>(
      `WITH RECURSIVE part(lotId) AS (
         SELECT lotId FROM sample_lot WHERE sampleId = ? UNION SELECT lot_part.partId FROM lot_part JOIN part ON lot_part.lotId = part.lotId)
       SELECT lotId, material.name || ', lot ' || lot.code AS name, expiresOn, retiredAt, retiredReason
       FROM part JOIN lot USING (lotId) JOIN material USING (materialId) WHERE retiredAt IS NOT NULL OR expiresOn < ? ORDER BY lot.addedSeq`,
      [sampleId, day],
    )
    .map(({ lotId, name, ...trust }) => ({ lotId, name, doubt: lotDoubt(trust, day) }));
}

function placeView(store: NotebookStore, lotId: string, place: { depth: number; again: boolean }, day: string): LotPlaceView {
  const lot = findLot(store, lotId);
  if (!lot) return { lotId, name: lotId, kind: 'other', ...place, doubt: '' };
  return { lotId, name: `${lot.material}, lot ${lot.code}`, kind: lot.kind, ...place, doubt: lotDoubt(lot, day) };
}
