import type { Limit } from '../method/method.ts';
import { areas } from './areas.ts';
import { attachedAbout } from './attachment-changes.ts';
import type { Entry } from './entry.ts';
import { entryMentions } from './entry-mentions.ts';
import { noLotDetails } from './material-entries.ts';
import { signedChanges } from './person-changes.ts';
import { noSampleDetails } from './sample-entries.ts';
import { insert, put, remove, set } from './table-change.ts';
import type { ChangeOf, TableChange, TableName } from './tables.ts';

/**
 * What an entry does to the tables. It looks at the entry alone, so its cost never grows with the notebook, and doing
 * this for every entry in order always gives the same tables.
 */
export function project(entry: Entry): TableChange[] {
  return [...changesOf(entry), ...signedChanges(entry), ...mentions(entry), about(entry)] as TableChange[];
}

function changesOf(entry: Entry): ChangeOf<TableName>[] {
  const { seq, by, occurredAt } = entry;
  switch (entry.kind) {
    case 'notebook.created':
      return [insert('notebook', { one: 1, title: entry.body.title, laboratory: entry.body.laboratory, createdAt: occurredAt })];
    case 'person.added':
      return [insert('person', { ...entry.body, retired: 0, retiredReason: '', addedSeq: seq })];
    case 'material.added':
      return [insert('material', { ...entry.body, layers: JSON.stringify(entry.body.layers ?? []), addedSeq: seq })];
    case 'lot.added': {
      const { details = noLotDetails, ...lot } = entry.body;
      return [insert('lot', { ...lot, ...details, retiredAt: null, retiredReason: '', addedSeq: seq })];
    }
    case 'sample.added': {
      const { lotIds, details = noSampleDetails, ...sample } = entry.body;
      return [
        insert('sample', { ...sample, ...details, retiredAt: null, retiredReason: '', addedAt: occurredAt, addedBy: by, addedSeq: seq }),
        ...lotIds.map((lotId, place) => insert('sample_lot', { sampleId: sample.sampleId, lotId, place })),
      ];
    }
    case 'test.started': {
      const { testId, sampleId, methodId, methodVersion, conditions, limits, rule } = entry.body;
      return [
        insert('test', {
          testId,
          sampleId,
          methodId,
          methodVersion,
          rule,
          state: 'running',
          startedAt: occurredAt,
          startedBy: by,
          startedSeq: seq,
          finishedAt: null,
          finishedBy: null,
          finishedSeq: null,
          calculation: null,
          calculationVersion: null,
          results: null,
          verdicts: null,
          remark: '',
          withdrawn: '',
        }),
        ...limitRows(testId, limits),
        ...Object.entries(conditions).map(([key, value]) =>
          insert('condition', { testId, key, value, typed: value === null ? '' : String(value), corrections: 0, seq }),
        ),
      ];
    }
    case 'limits.set': {
      const { testId, limits, rule } = entry.body;
      return [
        remove('test_limit', { testId }),
        ...limitRows(testId, limits),
        set('test', { testId }, { rule }),
        outdated(testId),
      ];
    }
    case 'condition.entered':
    case 'condition.corrected': {
      const { testId, key, value, typed } = entry.body;
      const corrections = entry.kind === 'condition.corrected' ? 1 : 0;
      return [put('condition', { testId, key, value, typed, seq }, { corrections }), outdated(testId)];
    }
    case 'reading.entered':
    case 'reading.corrected': {
      const { testId, row, key, value, typed } = entry.body;
      const corrections = entry.kind === 'reading.corrected' ? 1 : 0;
      return [
        put('bench_row', { testId, row }),
        put('reading', { testId, row, key, value, typed, seq }, { corrections }),
        outdated(testId),
      ];
    }
    case 'row.voided':
      return [
        put('bench_row', { testId: entry.body.testId, row: entry.body.row, voided: 1, voidReason: entry.body.reason }),
        outdated(entry.body.testId),
      ];
    case 'row.restored':
      return [
        put('bench_row', { testId: entry.body.testId, row: entry.body.row, voided: 0, voidReason: '' }),
        outdated(entry.body.testId),
      ];
    case 'row.remarked':
      return [put('bench_row', { ...entry.body })];
    case 'attachment.added':
      return [put('attachment', { ...entry.body, addedSeq: seq })];
    case 'trace.read': {
      const { traceId, testId, row, key, sha256, reading, points, reason } = entry.body;
      return [
        insert('trace', { traceId, testId, row, key, sha256, reading: JSON.stringify(reading), points, seq }),
        put('bench_row', { testId, row }),
        // A reason is only asked for when the cell had a trace before.
        put('reading', { testId, row, key, value: traceId, typed: '', seq }, { corrections: reason === '' ? 0 : 1 }),
        outdated(testId),
      ];
    }
    case 'test.finished': {
      const { testId, calculation, calculationVersion, results, verdicts, remark } = entry.body;
      return [
        set(
          'test',
          { testId },
          {
            state: 'finished',
            finishedAt: occurredAt,
            finishedBy: by,
            finishedSeq: seq,
            calculation,
            calculationVersion,
            results: JSON.stringify(results),
            verdicts: JSON.stringify(verdicts),
            remark,
          },
        ),
      ];
    }
    case 'report.issued': {
      const { testIds, replaces, ...report } = entry.body;
      return [
        insert('report', {
          ...report,
          issuedAt: occurredAt,
          issuedBy: by,
          issuedSeq: seq,
          replaces: replaces?.reportId ?? null,
          replacesReason: replaces?.reason ?? '',
          replacedBy: null,
        }),
        ...testIds.map((testId, place) => insert('report_test', { reportId: report.reportId, testId, place })),
        ...(replaces ? [set('report', { reportId: replaces.reportId }, { replacedBy: report.reportId })] : []),
      ];
    }
    default:
      return areas[entry.kind].changes(entry);
  }
}

/** A result stands on what was there when the test was finished; whatever changes that makes it outdated. */
function outdated(testId: string): ChangeOf<'test'> {
  return set('test', { testId, state: 'finished' }, { state: 'outdated' });
}

function limitRows(testId: string, limits: Limit[]): ChangeOf<'test_limit'>[] {
  return limits.map((limit, place) => insert('test_limit', { testId, ...limit, place }));
}

function mentions(entry: Entry): ChangeOf<'entry_mention'>[] {
  return entryMentions(entry).map((thing) => insert('entry_mention', { thing, seq: entry.seq }));
}

function about(entry: Entry): ChangeOf<'entry_about'> {
  const isAttached = entry.kind === 'attachment.linked' || entry.kind === 'attachment.unlinked';
  const body = isAttached ? attachedAbout(entry) : (entry.body as { testId?: string | null; sampleId?: string });
  return insert('entry_about', { seq: entry.seq, testId: body.testId ?? null, sampleId: body.sampleId ?? null });
}
