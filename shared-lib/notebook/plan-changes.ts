import type { Entry } from './entry.ts';
import type { planEntryBodies } from './plan-entries.ts';
import { insert, put, remove, set } from './table-change.ts';
import type { ChangeOf, TableName } from './tables.ts';

/** An entry about a plan. */
export type PlanEntry = Extract<Entry, { kind: keyof typeof planEntryBodies }>;

/** What such an entry does to the tables. */
export function planChanges(entry: PlanEntry): ChangeOf<TableName>[] {
  const { seq, by, occurredAt } = entry;
  switch (entry.kind) {
    case 'plan.added': {
      const { planId, version, content } = entry.body;
      return [
        insert('plan', { planId, version, title: content.title, product: content.product, retired: 0, retiredReason: '', addedSeq: seq }),
        versionRow(entry, [], ''),
      ];
    }
    case 'plan.versioned': {
      const { planId, version, content, changes, reason } = entry.body;
      return [
        set('plan', { planId }, { version, title: content.title, product: content.product, retired: 0, retiredReason: '' }),
        versionRow(entry, changes, reason),
      ];
    }
    case 'plan.retired':
      return [set('plan', { planId: entry.body.planId }, { retired: 1, retiredReason: entry.body.reason })];
    case 'plan.followed': {
      const { reason: _inTheRecord, ...followed } = entry.body;
      return [put('followed_plan', { ...followed, followedAt: occurredAt, followedBy: by, seq })];
    }
    case 'plan.left':
      return [remove('followed_plan', { sampleId: entry.body.sampleId })];
    case 'planLine.tested':
      return [put('planned_test', { ...entry.body, seq })];
  }
}

function versionRow({ seq, by, occurredAt, body }: Extract<PlanEntry, { kind: 'plan.added' | 'plan.versioned' }>, changes: string[], reason: string): ChangeOf<TableName> {
  const { planId, version, content } = body;
  return insert('plan_version', { planId, version, content: JSON.stringify(content), changes: JSON.stringify(changes), reason, writtenAt: occurredAt, writtenBy: by, seq });
}
