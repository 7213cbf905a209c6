import type { ParsedInput } from '../../../../shared-lib/api.ts';
import { InputError } from '../../../../shared-lib/calculation/input-error.ts';
import { calibrationStanding } from '../../../../shared-lib/equipment/standing.ts';
import type { InstrumentFields } from '../../../../shared-lib/notebook/equipment-entries.ts';
import type { InstrumentView } from '../../../../shared-lib/notebook/equipment-views.ts';
import { dayOf } from '../../day-of.ts';
import { calibrationsOf, findCalibration, findInstrument, listInstruments, type StoredInstrument } from '../../queries/equipment.ts';
import { nameOf } from '../../queries/people.ts';
import { Refusal } from '../../refusal.ts';
import { requireChange } from '../../require-change.ts';
import { requireReason } from '../../require-reason.ts';
import type { Workplace } from '../../workplace.ts';
import { knownMethods, methodTitles } from './served-methods.ts';

export function instrumentsList(workplace: Workplace): InstrumentView[] {
  return listInstruments(workplace.notebook.store).map((instrument) => instrumentView(workplace, instrument));
}

export function addInstrument(workplace: Workplace, input: ParsedInput<'instrument.add'>): InstrumentView {
  const fields = checked(workplace, input, '');
  const instrumentId = workplace.newId();
  workplace.notebook.append([{ kind: 'instrument.added', body: { instrumentId, ...fields } }]);
  return viewOf(workplace, instrumentId);
}

/** Says an instrument anew. */
export function changeInstrument(workplace: Workplace, { instrumentId, reason, ...input }: ParsedInput<'instrument.change'>): InstrumentView {
  const { name, serial, methodIds, note } = requireInstrument(workplace, instrumentId);
  const before: InstrumentFields = { name, serial, methodIds: JSON.parse(methodIds) as string[], note };
  const after = checked(workplace, input, instrumentId);
  workplace.notebook.append([{ kind: 'instrument.changed', body: { instrumentId, before, after, reason: requireChange(before, after, reason) } }]);
  return viewOf(workplace, instrumentId);
}

/** Puts down a calibration. What was read while none held stays flagged. */
export function calibrateInstrument(workplace: Workplace, { instrumentId, ...calibration }: ParsedInput<'instrument.calibrate'>): InstrumentView {
  requireInstrument(workplace, instrumentId);
  const { calibratedOn, dueOn } = calibration;
  if (calibratedOn > dayOf(workplace.now())) throw new InputError('calibratedOn', calibratedOn, `The day of calibration, ${calibratedOn}, is still to come.`);
  if (dueOn !== null && dueOn < calibratedOn) throw new InputError('dueOn', dueOn, `The calibration cannot end on ${dueOn}, before it was made on ${calibratedOn}.`);
  workplace.notebook.append([{ kind: 'instrument.calibrated', body: { instrumentId, calibrationId: workplace.newId(), ...calibration } }]);
  return viewOf(workplace, instrumentId);
}

/** A calibration that was entered wrongly. */
export function voidCalibration(workplace: Workplace, { calibrationId, reason }: ParsedInput<'calibration.void'>): InstrumentView {
  const calibration = findCalibration(workplace.notebook.store, calibrationId);
  if (!calibration) throw new Refusal('not-found', 'This calibration is not in the notebook, or was voided already.');
  requireReason(reason, 'A calibration is voided for a reason');
  workplace.notebook.append([{ kind: 'calibration.voided', body: { instrumentId: calibration.instrumentId, calibrationId, reason: reason.trim() } }]);
  return viewOf(workplace, calibration.instrumentId);
}

export function retireInstrument(workplace: Workplace, { instrumentId, reason }: ParsedInput<'instrument.retire'>): InstrumentView {
  if (requireInstrument(workplace, instrumentId).retiredAt !== null) throw new Refusal('conflict', 'This instrument is out of use already.');
  requireReason(reason, 'An instrument is taken out of use for a reason');
  workplace.notebook.append([{ kind: 'instrument.retired', body: { instrumentId, reason: reason.trim() } }]);
  return viewOf(workplace, instrumentId);
}

export function returnInstrument(workplace: Workplace, { instrumentId, reason }: ParsedInput<'instrument.return'>): InstrumentView {
  if (requireInstrument(workplace, instrumentId).retiredAt === null) throw new Refusal('conflict', 'This instrument is in use.');
  requireReason(reason, 'An instrument comes back into use for a reason');
  workplace.notebook.append([{ kind: 'instrument.returned', body: { instrumentId, reason: reason.trim() } }]);
  return viewOf(workplace, instrumentId);
}

function checked(workplace: Workplace, { name, serial, methodIds, note }: InstrumentFields, instrumentId: string): InstrumentFields {
  const fields = { name: name.trim(), serial: serial.trim(), methodIds: knownMethods(workplace, methodIds), note: note.trim() };
  if (fields.name === '') throw new InputError('name', name, 'An instrument needs a name.');
  const same = listInstruments(workplace.notebook.store).find((other) => other.instrumentId !== instrumentId && other.name.toLowerCase() === fields.name.toLowerCase() && other.serial.toLowerCase() === fields.serial.toLowerCase());
  if (same) throw new InputError(fields.serial ? 'serial' : 'name', fields.serial || name, `There is already an instrument ${same.typed}; tell them apart by the serial number.`);
  return fields;
}

function requireInstrument({ notebook }: Workplace, instrumentId: string): StoredInstrument {
  const instrument = findInstrument(notebook.store, instrumentId);
  if (!instrument) throw new Refusal('not-found', 'This instrument is not in the notebook.');
  return instrument;
}

function viewOf(workplace: Workplace, instrumentId: string): InstrumentView {
  return instrumentView(workplace, requireInstrument(workplace, instrumentId));
}

function instrumentView(workplace: Workplace, { instrumentId, name, serial, methodIds: ids, note, typed, retiredAt, retiredReason }: StoredInstrument): InstrumentView {
  const { store } = workplace.notebook;
  const methodIds = JSON.parse(ids) as string[];
  const calibrations = calibrationsOf(store, instrumentId).map(({ calibrationId, calibratedOn, dueOn, remark, enteredBy }) => ({ calibrationId, calibratedOn, dueOn, remark, enteredBy: nameOf(store, enteredBy) }));
  return {
    instrumentId,
    name,
    serial,
    methodIds,
    note,
    typed,
    methods: methodTitles(workplace, methodIds),
    calibrations,
    standing: calibrationStanding(calibrations, dayOf(workplace.now())).standing,
    retired: retiredAt === null ? '' : `since ${dayOf(retiredAt)}: ${retiredReason}`,
  };
}
