import type { Entry } from '../../../shared-lib/notebook/entry.ts';
import type { NotebookStore } from '../../store/notebook-store.ts';
import { dayOf } from '../day-of.ts';
import type { OpenNotebook } from '../open-notebook.ts';
import { UNDONE } from './undone.ts';

/** Farther back nobody undoes step by step. */
const LOOKED_BACK = 500;

/** Recorded by a person, and nothing that they did to be taken back. */
const NO_ACTION = ['signing.refused'];

/**
 * The last action of the person at the bench that was not undone: of this session, else, as after a crash, of today, from the
 * record. There what one call recorded stands together by its moment, and what undid it by its reason.
 */
export function lastAction(notebook: OpenNotebook): Entry[] | undefined {
  const { history, atBench, store } = notebook;
  if (atBench === null) return undefined;
  const ofSession = history.last(atBench);
  if (ofSession) return ofSession;
  const today = dayOf(new Date(notebook.now()));
  // Undoing takes the last action first, so each undoing met on the way back belongs to the next action behind it.
  let undone = 0;
  for (const action of actionsOf(store, atBench)) {
    if (dayOf(action[0]!.occurredAt) !== today) return undefined;
    if (history.standing(action).length === 0) continue;
    if (action.some(({ body }) => 'reason' in body && body.reason === UNDONE)) undone += 1;
    else if (undone > 0) undone -= 1;
    else return action;
  }
  return undefined;
}

/** What a person recorded here, not what was brought in from another bench; newest first, each action in its order. */
function* actionsOf(store: NotebookStore, personId: string): Generator<Entry[]> {
  const own = store.all<{ seq: number }>('SELECT seq FROM entry WHERE "by" = ? AND sealedSeq IS NULL ORDER BY seq DESC LIMIT ?', [personId, LOOKED_BACK]);
  let action: Entry[] = [];
  for (const { seq } of own) {
    const [entry] = store.entries(seq, seq);
    if (!entry || NO_ACTION.includes(entry.kind)) continue;
    if (action[0] && action[0].occurredAt !== entry.occurredAt) {
      yield action;
      action = [];
    }
    action.unshift(entry);
  }
  // The oldest may be cut off by how far it was looked back.
  if (action.length > 0 && own.length < LOOKED_BACK) yield action;
}
