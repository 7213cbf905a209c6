import type { ParsedInput } from '../../../../shared-lib/api.ts';
import { InputError } from '../../../../shared-lib/calculation/input-error.ts';
import { standingOf } from '../../../../shared-lib/equipment/standing.ts';
import type { FluidFields } from '../../../../shared-lib/notebook/equipment-entries.ts';
import type { FluidView } from '../../../../shared-lib/notebook/equipment-views.ts';
import { dayOf } from '../../day-of.ts';
import { findFluid, listFluids, type StoredFluid } from '../../queries/equipment.ts';
import { Refusal } from '../../refusal.ts';
import { requireChange } from '../../require-change.ts';
import { requireReason } from '../../require-reason.ts';
import type { Workplace } from '../../workplace.ts';
import { knownMethods, methodTitles } from './served-methods.ts';

export function fluidsList(workplace: Workplace): FluidView[] {
  return listFluids(workplace.notebook.store).map((fluid) => fluidView(workplace, fluid));
}

export function addFluid(workplace: Workplace, input: ParsedInput<'fluid.add'>): FluidView {
  const fields = checked(workplace, input, '');
  const fluidId = workplace.newId();
  workplace.notebook.append([{ kind: 'fluid.added', body: { fluidId, ...fields } }]);
  return viewOf(workplace, fluidId);
}

/** Says a test fluid, tape or standard anew. */
export function changeFluid(workplace: Workplace, { fluidId, reason, ...input }: ParsedInput<'fluid.change'>): FluidView {
  const { kind, name, lot, methodIds, openedOn, expiresOn, note } = requireFluid(workplace, fluidId);
  const before: FluidFields = { kind, name, lot, methodIds: JSON.parse(methodIds) as string[], openedOn, expiresOn, note };
  const after = checked(workplace, input, fluidId);
  workplace.notebook.append([{ kind: 'fluid.changed', body: { fluidId, before, after, reason: requireChange(before, after, reason) } }]);
  return viewOf(workplace, fluidId);
}

export function retireFluid(workplace: Workplace, { fluidId, reason }: ParsedInput<'fluid.retire'>): FluidView {
  if (requireFluid(workplace, fluidId).retiredAt !== null) throw new Refusal('conflict', 'This is out of use already.');
  requireReason(reason, 'It is taken out of use for a reason');
  workplace.notebook.append([{ kind: 'fluid.retired', body: { fluidId, reason: reason.trim() } }]);
  return viewOf(workplace, fluidId);
}

export function returnFluid(workplace: Workplace, { fluidId, reason }: ParsedInput<'fluid.return'>): FluidView {
  if (requireFluid(workplace, fluidId).retiredAt === null) throw new Refusal('conflict', 'This is in use.');
  requireReason(reason, 'It comes back into use for a reason');
  workplace.notebook.append([{ kind: 'fluid.returned', body: { fluidId, reason: reason.trim() } }]);
  return viewOf(workplace, fluidId);
}

function checked(workplace: Workplace, { kind, name, lot, methodIds, openedOn, expiresOn, note }: FluidFields, fluidId: string): FluidFields {
  const fields = { kind, name: name.trim(), lot: lot.trim(), methodIds: knownMethods(workplace, methodIds), openedOn, expiresOn, note: note.trim() };
  if (fields.name === '') throw new InputError('name', name, 'It needs a name.');
  if (openedOn !== null && openedOn > dayOf(workplace.now())) throw new InputError('openedOn', openedOn, `The day of opening, ${openedOn}, is still to come.`);
  const same = listFluids(workplace.notebook.store).find((other) => other.fluidId !== fluidId && other.name.toLowerCase() === fields.name.toLowerCase() && other.lot.toLowerCase() === fields.lot.toLowerCase());
  if (same) throw new InputError(fields.lot ? 'lot' : 'name', fields.lot || name, `There is already ${same.typed}; tell them apart by the lot.`);
  return fields;
}

function requireFluid({ notebook }: Workplace, fluidId: string): StoredFluid {
  const fluid = findFluid(notebook.store, fluidId);
  if (!fluid) throw new Refusal('not-found', 'This is not in the notebook.');
  return fluid;
}

function viewOf(workplace: Workplace, fluidId: string): FluidView {
  return fluidView(workplace, requireFluid(workplace, fluidId));
}

function fluidView(workplace: Workplace, { addedSeq: _order, methodIds: ids, retiredAt, retiredReason, ...fluid }: StoredFluid): FluidView {
  const methodIds = JSON.parse(ids) as string[];
  return {
    ...fluid,
    methodIds,
    methods: methodTitles(workplace, methodIds),
    standing: standingOf(fluid.expiresOn, dayOf(workplace.now())),
    retired: retiredAt === null ? '' : `since ${dayOf(retiredAt)}: ${retiredReason}`,
  };
}
