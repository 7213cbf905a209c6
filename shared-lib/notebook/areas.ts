import { approvalChanges } from './approval-changes.ts';
import { approvalEntryBodies } from './approval-entries.ts';
import { approvalSentence } from './approval-sentence.ts';
import { attachmentChanges } from './attachment-changes.ts';
import { attachmentEntryBodies } from './attachment-entries.ts';
import { attachmentSentence } from './attachment-sentence.ts';
import { colourChanges } from './colour-changes.ts';
import { colourEntryBodies } from './colour-entries.ts';
import { colourSentence } from './colour-sentence.ts';
import type { Entry, EntryKind } from './entry.ts';
import type { EntryNames } from './entry-names.ts';
import { equipmentChanges } from './equipment-changes.ts';
import { equipmentEntryBodies } from './equipment-entries.ts';
import { equipmentSentence } from './equipment-sentence.ts';
import { inHouseChanges } from './in-house-changes.ts';
import { inHouseEntryBodies } from './in-house-entries.ts';
import { inHouseSentence } from './in-house-sentence.ts';
import { materialChanges } from './material-changes.ts';
import { materialEntryBodies } from './material-entries.ts';
import { materialSentence } from './material-sentence.ts';
import { mergeChanges } from './merge-changes.ts';
import { mergeEntryBodies } from './merge-entries.ts';
import { mergeSentence } from './merge-sentence.ts';
import { notebookChanges } from './notebook-changes.ts';
import { notebookEntryBodies } from './notebook-entries.ts';
import { notebookSentence } from './notebook-sentence.ts';
import { personChanges } from './person-changes.ts';
import { personEntryBodies } from './person-entries.ts';
import { personSentence } from './person-sentence.ts';
import { planChanges } from './plan-changes.ts';
import { planEntryBodies } from './plan-entries.ts';
import { planSentence } from './plan-sentence.ts';
import { sampleChanges } from './sample-changes.ts';
import { sampleEntryBodies } from './sample-entries.ts';
import { sampleSentence } from './sample-sentence.ts';
import type { EntrySentence } from './sentence.ts';
import type { ChangeOf, TableName } from './tables.ts';
import { trialChanges } from './trial-changes.ts';
import { trialEntryBodies } from './trial-entries.ts';
import { trialSentence } from './trial-sentence.ts';
import { witnessChanges } from './witness-changes.ts';
import { witnessEntryBodies } from './witness-entries.ts';
import { witnessSentence } from './witness-sentence.ts';

/** What an area of the notebook does with its own kinds of entries. */
interface Area<Own extends Entry> {
  /** What the entry does to the tables. */
  changes(entry: Own): ChangeOf<TableName>[];
  /** The entry in words; text alone where it corrects nothing. */
  sentence(entry: Own, names: EntryNames): EntrySentence | string;
}

function area<Kind extends EntryKind>(bodies: Record<Kind, unknown>, own: Area<Extract<Entry, { kind: Kind }>>): Record<Kind, Area<Entry>> {
  return Object.fromEntries(Object.keys(bodies).map((kind) => [kind, own])) as Record<Kind, Area<Entry>>;
}

/** The area of each kind of entry; `project.ts` and `entry-sentence.ts` know the kinds that belong to none. */
export const areas = {
  ...area(notebookEntryBodies, { changes: notebookChanges, sentence: notebookSentence }),
  ...area(personEntryBodies, { changes: personChanges, sentence: personSentence }),
  ...area(materialEntryBodies, { changes: materialChanges, sentence: materialSentence }),
  ...area(sampleEntryBodies, { changes: sampleChanges, sentence: sampleSentence }),
  ...area(equipmentEntryBodies, { changes: equipmentChanges, sentence: equipmentSentence }),
  ...area(attachmentEntryBodies, { changes: attachmentChanges, sentence: attachmentSentence }),
  ...area(colourEntryBodies, { changes: colourChanges, sentence: colourSentence }),
  ...area(inHouseEntryBodies, { changes: inHouseChanges, sentence: inHouseSentence }),
  ...area(trialEntryBodies, { changes: trialChanges, sentence: trialSentence }),
  ...area(planEntryBodies, { changes: planChanges, sentence: planSentence }),
  ...area(approvalEntryBodies, { changes: approvalChanges, sentence: approvalSentence }),
  ...area(witnessEntryBodies, { changes: witnessChanges, sentence: witnessSentence }),
  ...area(mergeEntryBodies, { changes: mergeChanges, sentence: mergeSentence }),
};
