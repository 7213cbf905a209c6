import { isDeepStrictEqual } from 'node:util';
import type { ParsedInput } from '../../../shared-lib/api.ts';
import { InputError } from '../../../shared-lib/calculation/input-error.ts';
import { loopThrough } from '../../../shared-lib/material/genealogy.ts';
import { lotDoubt } from '../../../shared-lib/material/lot-doubt.ts';
import { UNDONE } from '../../../shared-lib/material/undone-reason.ts';
import type { LotDetails, LotFields } from '../../../shared-lib/notebook/material-entries.ts';
import type { LotLine, LotPage } from '../../../shared-lib/notebook/material-views.ts';
import type { MaterialView } from '../../../shared-lib/notebook/views.ts';
import type { LotView } from '../../../shared-lib/notebook/lot-view.ts';
import { dayOf } from '../day-of.ts';
import { knownLots } from '../known-lots.ts';
import { findLot, findLotByCode, lotName, lotPlaces, partIdsOf } from '../queries/lots.ts';
import { Refusal } from '../refusal.ts';
import { requireChange } from '../require-change.ts';
import { requireReason } from '../require-reason.ts';
import { typedAmount } from '../typed-amount.ts';
import type { Workplace } from '../workplace.ts';
import { getMaterial } from './materials.ts';

/** Why what was undone is back. */
const ENTERED_AGAIN = 'entered again';

/** One whose code was undone before comes back into use, with what is said now. */
export function addLot(workplace: Workplace, input: ParsedInput<'lot.add'>): LotView {
  const material = getMaterial(workplace, input);
  const { materialId, code, receivedOn, note } = input;
  const details = detailsOf(workplace, material, input);
  const undone = undoneLot(workplace, material, code);
  if (undone) {
    const [before, after] = [fieldsOf(undone), { code, receivedOn, note, ...details }];
    const { lotId } = undone;
    workplace.notebook.append([
      { kind: 'lot.returned', body: { lotId, reason: ENTERED_AGAIN } },
      ...(isDeepStrictEqual(before, after) ? [] : [{ kind: 'lot.described' as const, body: { lotId, before, after, reason: ENTERED_AGAIN } }]),
    ]);
    return requireLot(workplace, lotId);
  }
  requireOwnCode(workplace, material, code, '');
  const lotId = workplace.newId();
  const isSaid = Object.values(details).some((value) => value !== null);
  workplace.notebook.append([{ kind: 'lot.added', body: { lotId, materialId, code, receivedOn, note, ...(isSaid ? { details } : {}) } }]);
  return { lotId, materialId, code, receivedOn, note, kind: material.kind, material: material.name, supplier: material.supplier };
}

/** @throws Refusal when there is no such lot */
export function lotPage(workplace: Workplace, { lotId }: { lotId: string }): LotPage {
  const { store } = workplace.notebook;
  const lot = requireLot(workplace, lotId);
  const day = dayOf(workplace.now());
  return {
    ...lot,
    layers: getMaterial(workplace, lot).layers,
    doubt: lotDoubt(lot, day),
    madeFrom: lotPlaces(store, lotId, 'made from', day),
    wentInto: lotPlaces(store, lotId, 'went into', day),
  };
}

/** Says a lot anew. */
export function describeLot(workplace: Workplace, { lotId, reason, ...input }: ParsedInput<'lot.describe'>): LotPage {
  const lot = requireLot(workplace, lotId);
  const material = getMaterial(workplace, lot);
  requireOwnCode(workplace, material, input.code, lotId);
  const before = fieldsOf(lot);
  const after: LotFields = { code: input.code, receivedOn: input.receivedOn, note: input.note, ...detailsOf(workplace, material, input) };
  workplace.notebook.append([{ kind: 'lot.described', body: { lotId, before, after, reason: requireChange(before, after, reason) } }]);
  return lotPage(workplace, { lotId });
}

/** Puts down what went into a lot. @throws InputError on `lotIds` that names the loop which it would close */
export function makeLotFrom(workplace: Workplace, { lotId, lotIds, reason }: ParsedInput<'lot.makeFrom'>): LotPage {
  const { notebook } = workplace;
  const { store } = notebook;
  requireLot(workplace, lotId);
  const parts = knownLots(store, lotIds);
  const loop = loopThrough(lotId, parts, (from) => partIdsOf(store, from));
  if (loop) throw new InputError('lotIds', lotIds, `A lot cannot be made from itself: ${loopInWords(loop.map((part) => lotName(store, part)))}.`);
  const before = partIdsOf(store, lotId);
  if (before.join() === parts.join()) throw new Refusal('conflict', 'Nothing was changed.');
  if (before.some((part) => !parts.includes(part))) requireReason(reason, 'A lot was put down that is left out now');
  notebook.append([{ kind: 'lot.madeFrom', body: { lotId, before, lotIds: parts, reason: reason.trim() } }]);
  return lotPage(workplace, { lotId });
}

/** A lot is never deleted: it stays with what was made from it, and is flagged there. */
export function retireLot(workplace: Workplace, { lotId, reason }: ParsedInput<'lot.retire'>): LotPage {
  const lot = requireLot(workplace, lotId);
  if (lot.retiredAt !== null) throw new Refusal('conflict', 'This lot is retired already.');
  requireReason(reason, 'A lot is retired for a reason');
  workplace.notebook.append([{ kind: 'lot.retired', body: { lotId, reason: reason.trim() } }]);
  return lotPage(workplace, { lotId });
}

export function returnLot(workplace: Workplace, { lotId, reason }: ParsedInput<'lot.return'>): LotPage {
  const lot = requireLot(workplace, lotId);
  if (lot.retiredAt === null) throw new Refusal('conflict', 'This lot is in use.');
  requireReason(reason, 'A retired lot comes back for a reason');
  workplace.notebook.append([{ kind: 'lot.returned', body: { lotId, reason: reason.trim() } }]);
  return lotPage(workplace, { lotId });
}

export function requireLot({ notebook }: Workplace, lotId: string): LotLine {
  const lot = findLot(notebook.store, lotId);
  if (!lot) throw new Refusal('not-found', 'This lot is not in the notebook.');
  return lot;
}

/** A lot of this code whose entry was undone. */
function undoneLot({ notebook }: Workplace, { materialId }: MaterialView, code: string): LotLine | undefined {
  const lot = findLotByCode(notebook.store, materialId, code);
  return lot?.retiredAt && lot.retiredReason === UNDONE ? lot : undefined;
}

function requireOwnCode({ notebook }: Workplace, { materialId, name }: MaterialView, code: string, lotId: string): void {
  const same = findLotByCode(notebook.store, materialId, code);
  if (!same || same.lotId === lotId) return;
  throw new InputError('code', code, `${name} already has a lot ${code}${same.retiredAt === null ? '' : same.retiredReason === UNDONE ? '; it was undone: add it again to use it' : '; it is retired: take it back into use on its page'}.`);
}

function fieldsOf({ code, receivedOn, note, expiresOn, treatedOn, treatedSide, thicknessUm }: LotLine): LotFields {
  return { code, receivedOn, note, expiresOn, treatedOn, treatedSide, thicknessUm };
}

function detailsOf(workplace: Workplace, { kind }: MaterialView, { receivedOn, expiresOn, treatedOn, treatedSide, thickness }: Pick<ParsedInput<'lot.add'>, 'receivedOn' | 'expiresOn' | 'treatedOn' | 'treatedSide' | 'thickness'>): LotDetails {
  if (receivedOn !== null && expiresOn !== null && expiresOn < receivedOn) throw new InputError('expiresOn', expiresOn, `It would have expired on ${expiresOn}, before it was received on ${receivedOn}; look at both days again.`);
  const isFilm = kind === 'film' || kind === 'laminate';
  if (!isFilm && (treatedOn !== null || treatedSide !== null)) throw new InputError(treatedOn === null ? 'treatedSide' : 'treatedOn', treatedOn ?? treatedSide, 'Only a film or laminate is treated.');
  if (!isFilm && thickness.trim() !== '') throw new InputError('thickness', thickness, 'Only a film or laminate has a thickness.');
  if (treatedOn !== null && treatedOn > dayOf(workplace.now())) throw new InputError('treatedOn', treatedOn, `The day of treatment, ${treatedOn}, is still to come; put down the day on which it was treated.`);
  return { expiresOn, treatedOn, treatedSide, thicknessUm: typedAmount(thickness, 'thickness', 'The thickness', 'µm', { low: 0, lowIsOut: true, high: 5000 }) };
}

/** 'A would be made from B, which is made from A': the first step is the one that is refused. */
function loopInWords([first, second, ...others]: string[]): string {
  return [`${first} would be made from ${second}`, ...others].join(', which is made from ');
}
