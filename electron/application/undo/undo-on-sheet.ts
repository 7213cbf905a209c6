import type { Entry } from '../../../shared-lib/notebook/entry.ts';
import type { Draft } from '../open-notebook.ts';
import { changedSince, UNDONE } from './undone.ts';

type RowEntry = Extract<Entry, { kind: 'row.voided' | 'row.restored' | 'row.remarked' }>;
type LimitsEntry = Extract<Entry, { kind: 'limits.set' }>;

/** @param entries of the test, in their order */
export function undoRow(entries: Entry[], entry: RowEntry): Draft[] {
  const { testId, row } = entry.body;
  const alike = entries.filter((other): other is RowEntry => isOfRow(other) && other.body.row === row && (other.kind === 'row.remarked') === (entry.kind === 'row.remarked'));
  if (alike.at(-1)?.seq !== entry.seq) throw changedSince();
  const earlier = alike.at(-2);
  switch (entry.kind) {
    case 'row.voided':
      return [{ kind: 'row.restored', body: { testId, row, reason: UNDONE } }];
    case 'row.restored':
      // Voided again for the reason that it was voided for.
      return [{ kind: 'row.voided', body: { testId, row, reason: earlier?.kind === 'row.voided' ? earlier.body.reason : UNDONE } }];
    case 'row.remarked':
      return [{ kind: 'row.remarked', body: { testId, row, remark: earlier?.kind === 'row.remarked' ? earlier.body.remark : '' } }];
  }
}

/** @param entries of the test, in their order */
export function undoLimits(entries: Entry[], entry: LimitsEntry): Draft[] {
  const { testId } = entry.body;
  const set = entries.filter((other) => other.kind === 'limits.set' || other.kind === 'test.started');
  const earlier = set.at(-2);
  if (set.at(-1)?.seq !== entry.seq || !earlier) throw changedSince();
  const { limits, rule } = earlier.body;
  return [{ kind: 'limits.set', body: { testId, limits, rule, reason: UNDONE } }];
}

function isOfRow(entry: Entry): entry is RowEntry {
  return entry.kind === 'row.voided' || entry.kind === 'row.restored' || entry.kind === 'row.remarked';
}
