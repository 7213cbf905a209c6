import { isDeepStrictEqual } from 'node:util';
import { structureText } from '../../../shared-lib/material/structure-text.ts';
import type { Entry } from '../../../shared-lib/notebook/entry.ts';
import { onlyChanged } from '../../../shared-lib/notebook/only-changed.ts';
import { fieldNamed } from '../field-named.ts';
import { itemFinder } from '../item-finder.ts';
import { loadTest } from '../queries/tests.ts';
import { readCell } from '../read-cell.ts';
import { Refusal } from '../refusal.ts';
import { enterCondition } from '../use-cases/conditions.ts';
import { changeFluid, fluidsList } from '../use-cases/equipment/fluids.ts';
import { changeInstrument, instrumentsList } from '../use-cases/equipment/instruments.ts';
import { setLimits } from '../use-cases/limits.ts';
import { describeLot, lotPage, makeLotFrom } from '../use-cases/lots.ts';
import { describeMaterial, getMaterial } from '../use-cases/materials.ts';
import { changePerson } from '../use-cases/people.ts';
import { enterReading } from '../use-cases/readings.ts';
import { setTolerance } from '../use-cases/references.ts';
import { changeSample, sampleView } from '../use-cases/samples.ts';
import { setFactors, setResponses } from '../use-cases/trials/trial-sets.ts';
import { changeTrial } from '../use-cases/trials/trials.ts';
import type { Workplace } from '../workplace.ts';

/** Says the other word anew, with the reason, through the use case by which a person corrects it. @throws as that use case */
export type TakeOther = (workplace: Workplace, reason: string) => void;

type CellEntry = Extract<Entry, { kind: 'reading.entered' | 'reading.corrected' | 'condition.entered' | 'condition.corrected' }>;
type ChangeEntry = Extract<Entry, { body: { before: object; after: object } }>;

/**
 * How to let `other` stand, which gave way to `stands`; `null` where that cannot be said in one correction: a trace or picture is
 * read again, a remark has no reason, a retired thing is retired either way.
 */
export function takeOther(stands: Entry, other: Entry): TakeOther | null {
  switch (other.kind) {
    case 'reading.entered':
    case 'reading.corrected':
    case 'condition.entered':
    case 'condition.corrected':
      return other.body.value !== null && other.body.typed === '' ? null : (workplace, reason) => takeCell(workplace, other, reason);
    case 'limits.set':
      return (workplace, reason) => void setLimits(workplace, { ...other.body, reason });
    case 'tolerance.set':
      return (workplace, reason) => void setTolerance(workplace, { ...other.body, reason });
    case 'person.changed':
      return (workplace, reason) => void changePerson(workplace, { personId: other.body.personId, name: other.body.name, role: other.body.role, reason });
    case 'trial.changed':
      return (workplace, reason) => void changeTrial(workplace, { ...other.body, reason });
    case 'responses.set':
      return (workplace, reason) => void setResponses(workplace, { ...other.body, reason });
    case 'factors.set':
      return (workplace, reason) => void setFactors(workplace, { ...other.body, reason });
    case 'lot.madeFrom':
      return (workplace, reason) => void makeLotFrom(workplace, { lotId: other.body.lotId, lotIds: other.body.lotIds, reason });
    case 'material.described':
    case 'lot.described':
    case 'sample.changed':
    case 'instrument.changed':
    case 'fluid.changed':
      return stands.kind === other.kind ? (workplace, reason) => takeFields(workplace, stands as ChangeEntry, other, reason) : null;
    default:
      return null;
  }
}

function takeCell(workplace: Workplace, { body, ...entry }: CellEntry, reason: string): void {
  const { notebook } = workplace;
  const { testId, key, typed, value } = body;
  const method = notebook.methods.ofTest(loadTest(notebook.store, testId));
  const field = fieldNamed(entry.kind.startsWith('reading') ? method.readings.fields : method.conditions, key);
  if (!isDeepStrictEqual(readCell(field, typed, 'typed', itemFinder(notebook.store)), value)) {
    throw new Refusal('conflict', `${field.label} would be read otherwise now than it was then: correct it where it was entered, with the reason.`);
  }
  if ('row' in body) enterReading(workplace, { testId, row: body.row, key, typed, reason });
  else enterCondition(workplace, { testId, key, typed, reason });
}

/** Only the fields that both changed: what one of them alone changed stands already. */
function takeFields(workplace: Workplace, stands: ChangeEntry, other: ChangeEntry, reason: string): void {
  const { notebook } = workplace;
  const contested = Object.keys(onlyChanged<object>(stands.body.before, stands.body.after));
  const taken = <Fields extends object>(after: Fields): Partial<Fields> =>
    Object.fromEntries(Object.entries(onlyChanged<object>(other.body.before, after)).filter(([key]) => contested.includes(key))) as Partial<Fields>;
  switch (other.kind) {
    case 'material.described': {
      const { materialId, after } = other.body;
      const { name, supplier, description, layers } = { ...getMaterial(workplace, { materialId }), ...taken(after) };
      describeMaterial(workplace, { materialId, name, supplier, description, structure: structureText(layers), reason });
      break;
    }
    case 'lot.described': {
      const { lotId, after } = other.body;
      const { code, receivedOn, note, expiresOn, treatedOn, treatedSide, thicknessUm } = { ...lotPage(workplace, { lotId }), ...taken(after) };
      describeLot(workplace, { lotId, code, receivedOn, note, expiresOn, treatedOn, treatedSide, thickness: typed(thicknessUm), reason });
      break;
    }
    case 'sample.changed': {
      const { sampleId, after } = other.body;
      const sample = sampleView(notebook, sampleId);
      const { code, product, job, roll, note, customer, keptAt, retainedUntil, acrossMm, alongM, lotIds } = { ...sample, lotIds: sample.lots.map(({ lotId }) => lotId), ...taken(after) };
      changeSample(workplace, { sampleId, code, product, job, roll, note, customer, keptAt, retainedUntil, across: typed(acrossMm), along: typed(alongM), lotIds, reason });
      break;
    }
    case 'instrument.changed': {
      const { instrumentId, after } = other.body;
      const { name, serial, methodIds, note } = { ...instrumentsList(workplace).find((one) => one.instrumentId === instrumentId)!, ...taken(after) };
      changeInstrument(workplace, { instrumentId, name, serial, methodIds, note, reason });
      break;
    }
    case 'fluid.changed': {
      const { fluidId, after } = other.body;
      const { kind, name, lot, methodIds, openedOn, expiresOn, note } = { ...fluidsList(workplace).find((one) => one.fluidId === fluidId)!, ...taken(after) };
      changeFluid(workplace, { fluidId, kind, name, lot, methodIds, openedOn, expiresOn, note, reason });
      break;
    }
  }
}

function typed(amount: number | null): string {
  return amount === null ? '' : String(amount);
}
