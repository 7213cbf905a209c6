import type { colourEntryBodies } from './colour-entries.ts';
import type { Entry } from './entry.ts';
import { insert, put, set } from './table-change.ts';
import type { ChangeOf, TableName } from './tables.ts';

/** An entry about reference colours or spectra. */
export type ColourEntry = Extract<Entry, { kind: keyof typeof colourEntryBodies }>;

/** What such an entry does to the tables. */
export function colourChanges(entry: ColourEntry): ChangeOf<TableName>[] {
  const { seq, by, occurredAt } = entry;
  switch (entry.kind) {
    case 'reference.added': {
      const { lab, file, replaces, ...reference } = entry.body;
      return [
        insert('reference_colour', {
          ...reference,
          L: lab?.L ?? null,
          a: lab?.a ?? null,
          b: lab?.b ?? null,
          file: file === null ? null : JSON.stringify(file),
          replacedBy: null,
          retiredAt: null,
          retiredReason: '',
          addedAt: occurredAt,
          addedBy: by,
          addedSeq: seq,
        }),
        ...(replaces ? [set('reference_colour', { referenceId: replaces.referenceId }, { replacedBy: reference.referenceId })] : []),
      ];
    }
    case 'tolerance.set': {
      const { reason: _inTheRecord, ...tolerance } = entry.body;
      return [put('reference_tolerance', { ...tolerance, seq })];
    }
    case 'reference.retired':
      return [set('reference_colour', { referenceId: entry.body.referenceId }, { retiredAt: occurredAt, retiredReason: entry.body.reason })];
    case 'reference.returned':
      return [set('reference_colour', { referenceId: entry.body.referenceId }, { retiredAt: null, retiredReason: '' })];
    case 'spectrum.read': {
      const { testId, row, key, value, file, reason } = entry.body;
      const corrections = reason === '' ? 0 : 1;
      return [
        put('spectrum_file', { testId, row, key, file: JSON.stringify(file), seq }),
        ...(row === ''
          ? [put('condition', { testId, key, value, typed: '', seq }, { corrections })]
          : [put('bench_row', { testId, row }), put('reading', { testId, row, key, value, typed: '', seq }, { corrections })]),
        set('test', { testId, state: 'finished' }, { state: 'outdated' }),
      ];
    }
  }
}
