import type { Entry } from './entry.ts';
import type { equipmentEntryBodies } from './equipment-entries.ts';
import { onlyChanged } from './only-changed.ts';
import { insert, remove, set } from './table-change.ts';
import type { ChangeOf, TableName } from './tables.ts';

/** An entry about an instrument, or a test fluid, tape or standard. */
export type EquipmentEntry = Extract<Entry, { kind: keyof typeof equipmentEntryBodies }>;

const IN_USE = { retiredAt: null, retiredReason: '' } as const;

/** What such an entry does to the tables. */
export function equipmentChanges(entry: EquipmentEntry): ChangeOf<TableName>[] {
  const { seq, occurredAt } = entry;
  switch (entry.kind) {
    case 'instrument.added': {
      const { methodIds, ...instrument } = entry.body;
      return [insert('instrument', { ...instrument, methodIds: JSON.stringify(methodIds), ...IN_USE, addedSeq: seq })];
    }
    case 'instrument.changed': {
      const { methodIds, ...changed } = onlyChanged(entry.body.before, entry.body.after);
      return [set('instrument', { instrumentId: entry.body.instrumentId }, { ...changed, ...(methodIds ? { methodIds: JSON.stringify(methodIds) } : {}) })];
    }
    case 'instrument.calibrated':
      return [insert('calibration', { ...entry.body, enteredBy: entry.by, seq })];
    case 'calibration.voided':
      return [remove('calibration', { calibrationId: entry.body.calibrationId })];
    case 'instrument.retired':
      return [set('instrument', { instrumentId: entry.body.instrumentId }, { retiredAt: occurredAt, retiredReason: entry.body.reason })];
    case 'instrument.returned':
      return [set('instrument', { instrumentId: entry.body.instrumentId }, IN_USE)];
    case 'fluid.added': {
      const { methodIds, ...fluid } = entry.body;
      return [insert('fluid', { ...fluid, methodIds: JSON.stringify(methodIds), ...IN_USE, addedSeq: seq })];
    }
    case 'fluid.changed': {
      const { methodIds, ...changed } = onlyChanged(entry.body.before, entry.body.after);
      return [set('fluid', { fluidId: entry.body.fluidId }, { ...changed, ...(methodIds ? { methodIds: JSON.stringify(methodIds) } : {}) })];
    }
    case 'fluid.retired':
      return [set('fluid', { fluidId: entry.body.fluidId }, { retiredAt: occurredAt, retiredReason: entry.body.reason })];
    case 'fluid.returned':
      return [set('fluid', { fluidId: entry.body.fluidId }, IN_USE)];
  }
}
