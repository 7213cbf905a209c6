import { benchName } from '../../electron/application/merge/bench-name.ts';
import { planMerge, type MergePlan } from '../../electron/application/merge/plan-merge.ts';
import type { NotebookStore } from '../../electron/store/notebook-store.ts';

/** Takes `other` into `store`. @returns what was planned. */
export function merge(store: NotebookStore, other: NotebookStore, by = 'p1'): MergePlan {
  const plan = planMerge(store, other);
  const { brought, files, ...found } = plan;
  if (brought.length === 0) return plan;
  const { title, laboratory } = other.one<{ title: string; laboratory: string }>('SELECT title, laboratory FROM notebook')!;
  const mergeId = `merge ${store.entryCount} ${benchName(store)}`;
  store.bringIn(
    brought,
    { kind: 'notebook.merged', body: { mergeId, bench: benchName(other), title, laboratory, ...found }, by, occurredAt: '2025-05-04T08:00:00.000Z' },
    files.map((sha256) => ({ sha256, bytes: other.attachment(sha256)! })),
  );
  return plan;
}
