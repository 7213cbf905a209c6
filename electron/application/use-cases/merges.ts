import type { ParsedInput } from '../../../shared-lib/api.ts';
import { InputError } from '../../../shared-lib/calculation/input-error.ts';
import type { Entry } from '../../../shared-lib/notebook/entry.ts';
import { describeEntry } from '../../../shared-lib/notebook/entry-sentence.ts';
import type { MergePreview, MergeView } from '../../../shared-lib/notebook/merge-views.ts';
import type { NotebookStore } from '../../store/notebook-store.ts';
import { entryNames } from '../entry-names.ts';
import { benchName } from '../merge/bench-name.ts';
import { dayOf } from '../day-of.ts';
import { conflictView, inOrder } from '../merge/conflict-view.ts';
import { withOtherNotebook } from '../merge/other-notebook.ts';
import { planMerge, type MergePlan } from '../merge/plan-merge.ts';
import { settledBy } from '../merge/settled-by.ts';
import { takeOther } from '../merge/take-other.ts';
import { MethodBook } from '../method-book.ts';
import { benchOf, conflictsOfMerge, listMerges } from '../queries/merges.ts';
import { notebookHeading } from '../queries/notebook-heading.ts';
import { nameOf } from '../queries/people.ts';
import { requireReason } from '../require-reason.ts';
import { Refusal } from '../refusal.ts';
import type { Workplace } from '../workplace.ts';
import { requireKnown } from './notebooks.ts';

/** What taking in another notebook would do; nothing is changed. */
export function previewMerge(workplace: Workplace, { handle }: ParsedInput<'merge.preview'>): Promise<MergePreview> {
  requireKnown(workplace, handle);
  return withOtherNotebook(workplace, handle, (theirs) => {
    const { store, methods } = workplace.notebook;
    const plan = planMerge(store, theirs);
    const [ourNames, theirNames] = [entryNames(store, methods), entryNames(theirs, new MethodBook(theirs))];
    return {
      ...titled(theirs),
      entries: plan.brought.length,
      files: plan.files.length,
      people: countOf(plan, 'person.added'),
      samples: countOf(plan, 'sample.added'),
      common: commonEntries(theirs, plan),
      conflicts: plan.conflicts.flatMap(({ here, there, taken, mark }) => {
        const [own, foreign] = [store.entry(here), theirs.entry(there)];
        if (!own || !foreign) return [];
        return [
          conflictView(
            { store, names: ourNames, entry: own, bench: benchOf(store, own.seq) },
            { store: theirs, names: theirNames, entry: foreign, bench: benchOf(theirs, foreign.seq) || benchName(theirs) },
            taken,
            mark?.code ?? null,
            { settled: '', anew: false },
          ),
        ];
      }),
    };
  });
}

export function makeMerge(workplace: Workplace, { handle, belongsHere }: ParsedInput<'merge.make'>): Promise<MergeView | null> {
  requireKnown(workplace, handle);
  return mergeWith(workplace, handle, belongsHere);
}

/**
 * Takes in what another notebook has and this one has not.
 * @param file its path, from the command line or known here
 * @param belongsHere a person has said that it belongs to this laboratory
 * @returns `null` when there is nothing new.
 * @throws InputError when both have no entry in common and nobody has said so
 */
export async function mergeWith(workplace: Workplace, file: string, belongsHere: boolean): Promise<MergeView | null> {
  const merged = await withOtherNotebook(workplace, file, (theirs) => {
    const { notebook } = workplace;
    const plan = planMerge(notebook.store, theirs);
    const { brought, files, ...found } = plan;
    if (brought.length === 0) return null;
    if (commonEntries(theirs, plan) === 0 && !belongsHere) throw unrelated(notebook.store, theirs, brought.length);
    const mergeId = workplace.newId();
    notebook.bringIn(brought, { kind: 'notebook.merged', body: { mergeId, ...titled(theirs), ...found } }, contentOf(theirs, files));
    return mergeId;
  });
  return mergesList(workplace).find(({ mergeId }) => mergeId === merged) ?? null;
}

/** Newest first, each with what did not go together. */
export function mergesList({ notebook: { store, methods } }: Workplace): MergeView[] {
  const names = entryNames(store, methods);
  const side = (entry: Entry) => ({ store, names, entry, bench: benchOf(store, entry.seq) });
  return listMerges(store).map(({ mergeId, bench, title, laboratory, count, mergedAt, mergedBy, seq }) => ({
    mergeId,
    bench,
    title,
    laboratory,
    entries: count,
    mergedAt,
    mergedBy: nameOf(store, mergedBy),
    conflicts: conflictsOfMerge(store, mergeId).flatMap(({ here, there, taken, mark, settledReason, settledBy: settler }) => {
      const [ours, theirs] = [store.entry(here), store.entry(there)];
      if (!ours || !theirs) return [];
      const later = settledReason === null ? settledBy(store, seq, ours, theirs) : undefined;
      const settled =
        settledReason !== null ? `${nameOf(store, settler ?? '')}: what was taken stands, because ${settledReason}`
        : later ? `${nameOf(store, later.by)}: ${describeEntry(later, names).text}`
        : '';
      return [conflictView(side(ours), side(theirs), taken, mark, { settled, anew: later !== undefined })];
    }),
  }));
}

/** @throws Refusal when there is no such conflict, or it is settled; InputError without a reason */
export function settleConflict(workplace: Workplace, { reason, ...named }: ParsedInput<'conflict.settle'>): MergeView[] {
  requireOpen(workplace, named);
  requireReason(reason, 'The other word gives way');
  workplace.notebook.append([{ kind: 'conflict.settled', body: { ...named, reason } }]);
  return mergesList(workplace);
}

/**
 * Lets the word stand that gave way, as if it were corrected where it was entered.
 * @throws Refusal when it cannot be said anew in one correction, or nothing would be changed by it; else as that correction
 */
export function takeOtherWord(workplace: Workplace, { reason, ...named }: ParsedInput<'conflict.takeOther'>): MergeView[] {
  const { store } = workplace.notebook;
  const { bench, mergedAt } = requireOpen(workplace, named);
  const { here, there, taken } = conflictsOfMerge(store, named.mergeId).find((one) => one.here === named.here && one.there === named.there)!;
  const take = taken === 'both' ? null : takeOther(...inOrder(store.entry(here)!, store.entry(there)!, taken));
  if (!take) throw new Refusal('conflict', 'This is not settled by one correction: look at it where it was entered.');
  requireReason(reason, 'What stands gives way');
  const entries = store.entryCount;
  take(workplace, `At the merge with ${bench} on ${dayOf(mergedAt)} the other word was taken: ${reason.trim()}`);
  if (store.entryCount === entries) throw new Refusal('conflict', 'Both words say the same value; settle it as it stands.');
  return mergesList(workplace);
}

function requireOpen(workplace: Workplace, { mergeId, here, there }: { mergeId: string; here: string; there: string }): MergeView {
  const merge = mergesList(workplace).find((one) => one.mergeId === mergeId);
  const conflict = merge?.conflicts.find((one) => one.here.id === here && one.there.id === there);
  if (!merge || !conflict) throw new Refusal('not-found', 'This conflict is not in the notebook.');
  if (conflict.state === 'settled') throw new Refusal('conflict', `This conflict is settled (${conflict.settled}).`);
  return merge;
}

function commonEntries(theirs: NotebookStore, { brought }: MergePlan): number {
  return theirs.entryCount - brought.length;
}

function countOf({ brought }: MergePlan, kind: Entry['kind']): number {
  return brought.filter((entry) => entry.kind === kind).length;
}

function unrelated(ours: NotebookStore, theirs: NotebookStore, entries: number): InputError {
  return new InputError('belongsHere', false, `${namesOf(theirs)} and ${namesOf(ours)} have no entry in common. Its ${entries} entries come in for good, so it must be said first that it belongs to this laboratory. Nothing was brought in.`);
}

function namesOf(store: NotebookStore): string {
  const { bench, title, laboratory } = titled(store);
  return `${bench} (“${title}”, ${laboratory || 'no laboratory named'})`;
}

function titled(store: NotebookStore): { bench: string; title: string; laboratory: string } {
  const { title, laboratory } = notebookHeading(store);
  return { bench: benchName(store), title, laboratory };
}

function* contentOf(store: NotebookStore, files: string[]) {
  for (const sha256 of files) yield { sha256, bytes: store.attachment(sha256)! };
}
