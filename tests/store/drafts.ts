import { createHash } from 'node:crypto';
import type { AttachmentContent } from '../../electron/store/journal.ts';
import type { DraftEntry } from '../../shared-lib/notebook/entry.ts';

const meta = { by: 'p1', occurredAt: '2025-05-03T08:00:00.000Z' };

/** What a notebook begins with: title, person, sample `s1`, test `t1`. */
export const beginning: DraftEntry[] = [
  { kind: 'notebook.created', body: { title: 'Series', laboratory: 'Quillmere Flexibles' }, ...meta },
  { kind: 'person.added', body: { personId: 'p1', name: 'Imke Rasmund', initials: 'IR', role: 'technician' }, ...meta },
  { kind: 'sample.added', body: { sampleId: 's1', code: 'S-001', product: 'ground coffee brick', job: '', roll: '', note: '', lotIds: [] }, ...meta },
  {
    kind: 'test.started',
    body: { testId: 't1', sampleId: 's1', methodId: 'wetting-tension', methodVersion: '1', conditions: {}, limits: [], rule: 'guarded' },
    ...meta,
  },
];

/** A reading of test `t1` in row `number`. */
export function reading(number: number, value = 38): DraftEntry {
  return { kind: 'reading.entered', body: { testId: 't1', row: `r${number}`, key: 'tensionMNm', value, typed: String(value) }, ...meta };
}

/** An attachment and the entry that announces it. */
export function attachment(text: string): { draft: DraftEntry; content: AttachmentContent } {
  const bytes = new TextEncoder().encode(text);
  const sha256 = createHash('sha256').update(bytes).digest('hex');
  return {
    draft: { kind: 'attachment.added', body: { sha256, name: 'trace.csv', mediaType: 'text/csv', size: bytes.length }, ...meta },
    content: { sha256, bytes },
  };
}
