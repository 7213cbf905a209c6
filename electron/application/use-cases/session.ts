import path from 'node:path';
import type { SessionView } from '../../../shared-lib/notebook/views.ts';
import { notebookHeading } from '../queries/notebook-heading.ts';
import { listPeople, requireActive } from '../queries/people.ts';
import { undoable } from './undo.ts';
import type { Workplace } from '../workplace.ts';

export function sessionView(workplace: Workplace): SessionView {
  const { open, settings, surroundings } = workplace;
  const recent = settings.recent.map((known) => ({ handle: known.path, fileName: path.basename(known.path), openedAt: known.openedAt }));
  if (!open) return { notebook: null, atBench: null, people: [], undoable: '', recent, version: surroundings.version };
  const { store } = open;
  const people = listPeople(store);
  const { title, laboratory } = notebookHeading(store);
  return {
    notebook: {
      handle: open.path,
      fileName: path.basename(open.path),
      title,
      laboratory,
      readOnly: store.readOnly !== '',
      readOnlyReason: store.readOnly,
      entries: store.entryCount,
      chainHash: store.chainHash,
      openingNotes: [...store.openingNotes],
    },
    atBench: people.find((person) => person.personId === open.atBench) ?? null,
    people,
    undoable: undoable(open),
    recent,
    version: surroundings.version,
  };
}

export function takeBench(workplace: Workplace, { personId }: { personId: string }): SessionView {
  const { notebook, settings } = workplace;
  requireActive(notebook.store, personId);
  notebook.atBench = personId;
  settings.remember({ path: notebook.path, openedAt: workplace.now().toISOString(), atBench: personId });
  return sessionView(workplace);
}
