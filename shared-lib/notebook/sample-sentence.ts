import { changedFields, type FieldWords } from './changed-fields.ts';
import type { EntryNames } from './entry-names.ts';
import { because, type EntrySentence } from './sentence.ts';
import type { SampleEntry } from './sample-changes.ts';
import type { SampleFields } from './sample-entries.ts';

/** An entry about a sample in one sentence, with what stood before where it corrects. */
export function sampleSentence(entry: SampleEntry, names: EntryNames): EntrySentence {
  const name = names.sample(entry.body.sampleId);
  switch (entry.kind) {
    case 'sample.changed': {
      const { said, correction } = changedFields(wordsOf(names), entry.body);
      return { text: `Changed sample ${name}: ${said}${because(entry.body.reason)}`, correction };
    }
    case 'sample.retired':
      return { text: `Put down sample ${name} as disposed of${because(entry.body.reason)}`, correction: null };
    case 'sample.returned':
      return { text: `Put down sample ${name} as kept again${because(entry.body.reason)}`, correction: null };
  }
}

function wordsOf(names: EntryNames): FieldWords<SampleFields> {
  const text = (value: string | null) => value ?? '';
  const length = (unit: string) => (value: number | null) => (value === null ? '' : `${value} ${unit}`);
  return {
    code: { label: 'code', text },
    product: { label: 'product', text },
    job: { label: 'job', text },
    roll: { label: 'roll', text },
    customer: { label: 'customer', text },
    acrossMm: { label: 'across the web', text: length('mm') },
    alongM: { label: 'along the roll', text: length('m') },
    keptAt: { label: 'kept at', text },
    retainedUntil: { label: 'retained until', text },
    lotIds: { label: 'lots', text: (lotIds) => lotIds.map((lotId) => names.lot(lotId)).join(', ') },
    note: { label: 'note', text },
  };
}
