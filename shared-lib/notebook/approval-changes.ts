import type { approvalEntryBodies } from './approval-entries.ts';
import type { Entry } from './entry.ts';
import { onlyChanged } from './only-changed.ts';
import { insert, put, remove, set } from './table-change.ts';
import type { ChangeOf, TableName } from './tables.ts';

/** An entry about a press approval. */
export type ApprovalEntry = Extract<Entry, { kind: keyof typeof approvalEntryBodies }>;

/** Whatever fills a line anew, a waiver of how it stood before says nothing any more. */
const NOT_WAIVED = { waivedOf: null, waiverReason: '', waivedBy: null, waivedAt: null } as const;
const NO_RESULT = { testId: null, finishedId: null, linkedBy: null, linkedAt: null } as const;
const NOT_OBSERVED = { inOrder: null, remark: '', observedBy: null, observedAt: null } as const;

/** What such an entry does to the tables. */
export function approvalChanges(entry: ApprovalEntry): ChangeOf<TableName>[] {
  const { seq, by, occurredAt } = entry;
  switch (entry.kind) {
    case 'approval.drafted': {
      const { lotIds, sampleIds, replaces, ...approval } = entry.body;
      return [
        insert('approval', {
          ...approval,
          samplesSaid: sampleIds ? 1 : 0,
          replaces: replaces?.approvalId ?? null,
          replacesReason: replaces?.reason ?? '',
          draftedAt: occurredAt,
          draftedBy: by,
          draftedSeq: seq,
          contentSha256: null,
          pdfSha256: null,
          signedMeaning: '',
          signedBy: null,
          signedAt: null,
          signedSeq: null,
          withdrawnReason: '',
          withdrawnBy: null,
          withdrawnAt: null,
          withdrawnSeq: null,
          replacedBy: null,
          replacedSeq: null,
        }),
        ...lotsOf(approval.approvalId, lotIds),
        ...samplesOf(approval.approvalId, sampleIds ?? []),
      ];
    }
    case 'approval.changed': {
      const { approvalId, before, after } = entry.body;
      const { lotIds, sampleIds, ...approval } = onlyChanged(before, after);
      const said = sampleIds === undefined ? {} : { samplesSaid: sampleIds ? (1 as const) : (0 as const) };
      return [
        ...(Object.keys({ ...approval, ...said }).length > 0 ? [set('approval', { approvalId }, { ...approval, ...said })] : []),
        ...(lotIds ? [remove('approval_lot', { approvalId }), ...lotsOf(approvalId, lotIds)] : []),
        ...(sampleIds === undefined ? [] : [remove('approval_sample', { approvalId }), ...samplesOf(approvalId, sampleIds ?? [])]),
      ];
    }
    case 'approvalLine.added':
      return [put('approval_line', { ...entry.body, addedSeq: seq })];
    case 'approvalLine.dropped': {
      const { reason: _inTheRecord, ...line } = entry.body;
      return [remove('approval_line', line), remove('approval_link', line)];
    }
    case 'approvalLine.linked': {
      const { approvalId, lineId, result } = entry.body;
      return [put('approval_line', { approvalId, lineId, ...result, linkedBy: by, linkedAt: occurredAt, ...NOT_OBSERVED, ...NOT_WAIVED }), put('approval_link', { approvalId, lineId, testId: result.testId, seq })];
    }
    case 'approvalLine.observed': {
      const { approvalId, lineId, inOrder, remark, signature } = entry.body;
      return [
        put('approval_line', { approvalId, lineId, ...NO_RESULT, inOrder: inOrder ? 1 : 0, remark, observedBy: signature.personId, observedAt: signature.at, ...NOT_WAIVED }),
      ];
    }
    case 'approvalLine.waived': {
      const { approvalId, lineId, of, reason, signature } = entry.body;
      return [put('approval_line', { approvalId, lineId, waivedOf: of, waiverReason: reason, waivedBy: signature.personId, waivedAt: signature.at })];
    }
    case 'approval.signed': {
      const { approvalId, contentSha256, pdfSha256, replaces, signature } = entry.body;
      return [
        set('approval', { approvalId }, { contentSha256, pdfSha256, signedMeaning: signature.meaning, signedBy: signature.personId, signedAt: signature.at, signedSeq: seq }),
        ...(replaces ? [set('approval', { approvalId: replaces }, { replacedBy: approvalId, replacedSeq: seq })] : []),
      ];
    }
    case 'approval.withdrawn': {
      const { approvalId, reason, signature } = entry.body;
      return [set('approval', { approvalId }, { withdrawnReason: reason, withdrawnBy: signature.personId, withdrawnAt: signature.at, withdrawnSeq: seq })];
    }
  }
}

function lotsOf(approvalId: string, lotIds: readonly string[]): ChangeOf<TableName>[] {
  return lotIds.map((lotId, place) => insert('approval_lot', { approvalId, lotId, place }));
}

function samplesOf(approvalId: string, sampleIds: readonly string[]): ChangeOf<TableName>[] {
  return sampleIds.map((sampleId, place) => insert('approval_sample', { approvalId, sampleId, place }));
}
