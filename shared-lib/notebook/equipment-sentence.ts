import { changedFields, type FieldWords } from './changed-fields.ts';
import type { FluidFields, InstrumentFields } from './equipment-entries.ts';
import type { EntryNames } from './entry-names.ts';
import { because, type EntrySentence } from './sentence.ts';
import type { EquipmentEntry } from './equipment-changes.ts';

/** An entry about an instrument, or a test fluid, tape or standard, in one sentence. */
export function equipmentSentence(entry: EquipmentEntry, names: EntryNames): EntrySentence {
  const plain = (text: string): EntrySentence => ({ text, correction: null });
  switch (entry.kind) {
    case 'instrument.added':
      return plain(`Added the instrument ${entry.body.name}${entry.body.serial ? `, serial number ${entry.body.serial}` : ''}.`);
    case 'instrument.changed':
      return changed(names.instrument(entry.body.instrumentId), changedFields(instrumentWords(names), entry.body), entry.body.reason);
    case 'instrument.calibrated': {
      const { instrumentId, calibratedOn, dueOn, remark } = entry.body;
      return plain(`Put down that ${names.instrument(instrumentId)} was calibrated on ${calibratedOn}${dueOn ? `, due again on ${dueOn}` : ''}${because(remark)}`);
    }
    case 'calibration.voided':
      return plain(`Voided a calibration of ${names.instrument(entry.body.instrumentId)}${because(entry.body.reason)}`);
    case 'instrument.retired':
      return plain(`Took ${names.instrument(entry.body.instrumentId)} out of use${because(entry.body.reason)}`);
    case 'instrument.returned':
      return plain(`Took ${names.instrument(entry.body.instrumentId)} back into use${because(entry.body.reason)}`);
    case 'fluid.added': {
      const { kind, name, lot, expiresOn } = entry.body;
      return plain(`Added ${kind === 'other' ? '' : `the ${kind} `}${name}${lot ? `, lot ${lot}` : ''}${expiresOn ? `, expires on ${expiresOn}` : ''}.`);
    }
    case 'fluid.changed':
      return changed(names.fluid(entry.body.fluidId), changedFields(fluidWords(names), entry.body), entry.body.reason);
    case 'fluid.retired':
      return plain(`Took ${names.fluid(entry.body.fluidId)} out of use${because(entry.body.reason)}`);
    case 'fluid.returned':
      return plain(`Took ${names.fluid(entry.body.fluidId)} back into use${because(entry.body.reason)}`);
  }
}

const text = (value: string | null) => value ?? '';
const methodsIn = (names: EntryNames) => (methodIds: string[]) => methodIds.map((methodId) => names.method(methodId)).join(', ');

function instrumentWords(names: EntryNames): FieldWords<InstrumentFields> {
  return { name: { label: 'name', text }, serial: { label: 'serial number', text }, methodIds: { label: 'methods', text: methodsIn(names) }, note: { label: 'note', text } };
}

function fluidWords(names: EntryNames): FieldWords<FluidFields> {
  return {
    kind: { label: 'kind', text },
    name: { label: 'name', text },
    lot: { label: 'lot', text },
    methodIds: { label: 'methods', text: methodsIn(names) },
    openedOn: { label: 'opened on', text },
    expiresOn: { label: 'expires on', text },
    note: { label: 'note', text },
  };
}

function changed(name: string, { said, correction }: ReturnType<typeof changedFields>, reason: string): EntrySentence {
  return { text: `Changed ${name}: ${said}${because(reason)}`, correction };
}
