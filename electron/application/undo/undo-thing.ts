import type { Entry } from '../../../shared-lib/notebook/entry.ts';
import type { NotebookStore } from '../../store/notebook-store.ts';
import type { Draft } from '../open-notebook.ts';
import { isDraft } from '../queries/approvals.ts';
import { testsOfSample } from '../queries/tests.ts';
import { Refusal } from '../refusal.ts';
import { retiredBefore } from './retired-before.ts';
import { stillStands } from './still-stands.ts';
import { changedSince, UNDONE } from './undone.ts';

/**
 * Takes back what was said of something beside the bench sheets: a material, a sample, a person, a file that was put with one.
 * @throws Refusal when it stays as it is, or somebody has said otherwise since
 */
export function undoThing(store: NotebookStore, entry: Entry): Draft[] {
  const drafts = draftsOf(store, entry);
  if (!stillStands(store, entry)) throw changedSince();
  return drafts;
}

function draftsOf(store: NotebookStore, entry: Entry): Draft[] {
  switch (entry.kind) {
    case 'attachment.linked': {
      const { caption: _, ...link } = entry.body;
      return [{ kind: 'attachment.unlinked', body: { ...link, reason: UNDONE } }];
    }
    case 'notebook.described':
    case 'material.described':
    case 'lot.described':
    case 'sample.changed':
    case 'instrument.changed':
    case 'fluid.changed': {
      const { before, after } = entry.body;
      return [{ kind: entry.kind, body: { ...entry.body, before: after, after: before, reason: UNDONE } } as Draft];
    }
    case 'approval.changed': {
      if (!isDraft(store, entry.body.approvalId)) throw new Refusal('conflict', 'This press approval was signed or withdrawn since and stays as it is.');
      const { before, after } = entry.body;
      return [{ kind: 'approval.changed', body: { ...entry.body, before: after, after: before, reason: UNDONE } }];
    }
    case 'lot.madeFrom': {
      const { lotId, before, lotIds } = entry.body;
      return [{ kind: 'lot.madeFrom', body: { lotId, before: lotIds, lotIds: before, reason: UNDONE } }];
    }
    case 'lot.added':
    case 'lot.returned':
      return [{ kind: 'lot.retired', body: { lotId: entry.body.lotId, reason: UNDONE, ...retiredBefore(store, entry, 'lot') } }];
    case 'lot.retired':
      return [{ kind: 'lot.returned', body: { lotId: entry.body.lotId, reason: UNDONE } }];
    case 'sample.added':
    case 'sample.returned':
      if (entry.kind === 'sample.added' && testsOfSample(store, entry.body.sampleId).length > 0) throw new Refusal('conflict', 'It has tests already: correct it, or retire it with a reason.');
      return [{ kind: 'sample.retired', body: { sampleId: entry.body.sampleId, reason: UNDONE, ...retiredBefore(store, entry, 'sample') } }];
    case 'sample.retired':
      return [{ kind: 'sample.returned', body: { sampleId: entry.body.sampleId, reason: UNDONE } }];
    case 'instrument.added':
    case 'instrument.returned':
      return [{ kind: 'instrument.retired', body: { instrumentId: entry.body.instrumentId, reason: UNDONE } }];
    case 'instrument.retired':
      return [{ kind: 'instrument.returned', body: { instrumentId: entry.body.instrumentId, reason: UNDONE } }];
    case 'instrument.calibrated': {
      const { instrumentId, calibrationId } = entry.body;
      return [{ kind: 'calibration.voided', body: { instrumentId, calibrationId, reason: UNDONE } }];
    }
    case 'fluid.added':
    case 'fluid.returned':
      return [{ kind: 'fluid.retired', body: { fluidId: entry.body.fluidId, reason: UNDONE } }];
    case 'fluid.retired':
      return [{ kind: 'fluid.returned', body: { fluidId: entry.body.fluidId, reason: UNDONE } }];
    case 'reference.returned':
      return [{ kind: 'reference.retired', body: { referenceId: entry.body.referenceId, reason: UNDONE } }];
    case 'reference.retired':
      return [{ kind: 'reference.returned', body: { referenceId: entry.body.referenceId, reason: UNDONE } }];
    case 'sample.linked':
      return [{ kind: 'sample.unlinked', body: { ...entry.body, reason: UNDONE } }];
    case 'sample.unlinked': {
      const { reason: _, ...link } = entry.body;
      return [{ kind: 'sample.linked', body: link }];
    }
    case 'person.changed': {
      const { personId, before, name, role } = entry.body;
      return [{ kind: 'person.changed', body: { personId, before: { name, role }, ...before, reason: UNDONE } }];
    }
    case 'person.retired':
      return [{ kind: 'person.returned', body: { personId: entry.body.personId, reason: UNDONE } }];
    case 'person.returned':
      return [{ kind: 'person.retired', body: { personId: entry.body.personId, reason: UNDONE } }];
    default:
      throw new Refusal('conflict', 'It stays in the record: say it anew where it is shown.');
  }
}
