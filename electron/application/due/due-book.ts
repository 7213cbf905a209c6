import type { OpenNotebook } from '../open-notebook.ts';
import { approvalsDue } from '../approvals/approvals-due.ts';
import { isInApproval, isOfDraft } from '../queries/approvals.ts';
import { groupBy } from '../queries/group-by.ts';
import { changesSince, type Change } from './changes-since.ts';
import { followUpsDue } from './follow-ups-due.ts';
import { planLinesDue } from './plan-lines-due.ts';
import { isRetest, retestsDue } from './retests-due.ts';
import type { StandingDue } from './standing-due.ts';
import { unfinishedDue } from './unfinished-due.ts';

/** An approval names people, samples and methods, and stands on a plan, on lots and on tests with their studies. */
const FOR_APPROVALS = /^(approval|person\.changed|sample\.(added|changed)|lot\.(retired|returned|madeFrom)|study\.)/;

/**
 * What tests, samples, lots and approvals ask for, kept while the notebook is open. Today is asked for after every entry:
 * only what the entries since concern is looked at again, so that its cost does not grow with the notebook.
 */
export class DueBook {
  /** Weak: a notebook that was closed gives its memory back. */
  #of: WeakRef<OpenNotebook> | null = null;
  #upTo = 0;
  #ofSamples = new Map<string, StandingDue[]>();
  #retests: StandingDue[] = [];
  #approvals: StandingDue[] = [];

  /** Everything, in no order. */
  all(notebook: OpenNotebook): StandingDue[] {
    this.#catchUp(notebook);
    return [...this.#ofSamples.values(), this.#retests, this.#approvals].flat();
  }

  #catchUp(notebook: OpenNotebook): void {
    const { store } = notebook;
    if (this.#of?.deref() !== notebook) [this.#of, this.#upTo] = [new WeakRef(notebook), 0];
    if (this.#upTo === store.entryCount) return;
    // A new version of an in-house method may have another title.
    const since = this.#upTo === 0 ? null : changesSince(store, this.#upTo);
    const changes = since?.some(({ kind }) => kind.startsWith('inHouseMethod.')) ? null : since;
    this.#catchUpSamples(notebook, changes);
    if (!changes || changes.some(isRetest)) this.#retests = retestsDue(store);
    if (!changes || changes.some((change) => concernsApproval(notebook, change))) this.#approvals = approvalsDue(notebook);
    this.#upTo = store.entryCount;
  }

  #catchUpSamples(notebook: OpenNotebook, changes: Change[] | null): void {
    const sampleIds = changes && [...new Set(changes.flatMap(({ sampleId }) => sampleId ?? []))];
    if (sampleIds?.length === 0) return;
    const found = groupBy([...unfinishedDue(notebook, sampleIds), ...followUpsDue(notebook, sampleIds), ...planLinesDue(notebook, sampleIds)], ({ sampleId }) => sampleId);
    if (!sampleIds) this.#ofSamples = found;
    for (const sampleId of sampleIds ?? []) {
      const asked = found.get(sampleId);
      if (asked) this.#ofSamples.set(sampleId, asked);
      else this.#ofSamples.delete(sampleId);
    }
  }
}

function concernsApproval({ store }: OpenNotebook, { kind, testId }: Change): boolean {
  return FOR_APPROVALS.test(kind) || (testId !== null && (isInApproval(store, testId) || isOfDraft(store, testId)));
}
