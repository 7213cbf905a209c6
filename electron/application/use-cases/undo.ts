import type { Entry } from '../../../shared-lib/notebook/entry.ts';
import { describeEntry } from '../../../shared-lib/notebook/entry-sentence.ts';
import type { UndoneView } from '../../../shared-lib/notebook/witness-views.ts';
import { entryNames } from '../entry-names.ts';
import type { OpenNotebook } from '../open-notebook.ts';
import { Refusal } from '../refusal.ts';
import { lastAction } from '../undo/last-action.ts';
import { undoDrafts } from '../undo/undo-drafts.ts';
import type { Workplace } from '../workplace.ts';

/** Takes back the last action of the person at the bench by further entries. What cannot be taken back is said, and stays. */
export function undoLast({ notebook }: Workplace): UndoneView {
  if (notebook.store.readOnly) throw new Refusal('read-only', notebook.store.readOnly);
  const action = lastAction(notebook);
  if (!action) return { done: false, text: 'There is nothing to undo: you have recorded nothing here today, or it is undone.' };
  const what = actionInWords(notebook, action);
  try {
    const drafts = undoDrafts(notebook, action);
    notebook.history.undone(action, notebook.append(drafts, [], 'undo'));
  } catch (error) {
    if (!(error instanceof Refusal)) throw error;
    return { done: false, text: `Not undone: ${what} ${error.message}` };
  }
  return { done: true, text: `Undone: ${what} Both stand in the record.` };
}

/** What would be undone, in words; '' where there is nothing. */
export function undoable(notebook: OpenNotebook): string {
  const action = lastAction(notebook);
  return action && !notebook.store.readOnly ? actionInWords(notebook, action) : '';
}

function actionInWords({ store, methods }: OpenNotebook, action: Entry[]): string {
  const names = entryNames(store, methods);
  // A file is announced before the entry that it is there for; values that the program filled in come after the one typed.
  const main = action.find(({ kind }) => kind !== 'attachment.added') ?? action[0]!;
  const said = action.filter((entry) => entry.kind !== 'attachment.added' && !('typed' in entry.body && entry.body.typed === ''));
  const alike = said.filter(({ kind }) => kind === main.kind).length - 1;
  const text = describeEntry(main, names).text;
  const other = said.find(({ kind }) => kind !== main.kind);
  const first = alike > 0 ? `${text.replace(/\.$/, '')}, and ${alike} more.` : text;
  return other ? `${first} ${describeEntry(other, names).text}` : first;
}
