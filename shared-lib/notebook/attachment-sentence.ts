import type { AttachmentEntry } from './attachment-changes.ts';
import type { AttachedTo } from './attachment-entries.ts';
import type { EntryNames } from './entry-names.ts';
import { because, ended } from './sentence.ts';

/** An entry about a file that belongs to something, or a photograph that is measured, in one sentence. */
export function attachmentSentence(entry: AttachmentEntry, names: EntryNames): string {
  switch (entry.kind) {
    case 'attachment.linked': {
      const { sha256, attachedTo, attachedId, caption } = entry.body;
      return `Put the file ${names.file(sha256)} with ${thing(attachedTo, attachedId, names)}${because(caption)}`;
    }
    case 'attachment.unlinked': {
      const { sha256, attachedTo, attachedId, reason } = entry.body;
      return `Took the file ${names.file(sha256)} away from ${thing(attachedTo, attachedId, names)}: ${ended(reason)}`;
    }
    case 'photo.measured': {
      const { sha256, testId, row, key, reading, reason } = entry.body;
      const where = `${names.field(testId, key)}, ${names.row(testId, row)}, in ${names.test(testId)}`;
      return `Measured the photograph ${names.file(sha256)} at threshold ${reading.threshold} for ${where}${because(reason)}`;
    }
  }
}

function thing(attachedTo: AttachedTo, id: string, names: EntryNames): string {
  switch (attachedTo) {
    case 'sample':
      return `sample ${names.sample(id)}`;
    case 'lot':
      return names.lot(id);
    case 'material':
      return names.material(id);
    case 'test':
      return names.test(id);
    case 'method':
      return `the method ${names.method(id)}`;
    case 'instrument':
      return names.instrument(id);
    case 'fluid':
      return names.fluid(id);
  }
}
