import type { Person } from '../../../shared-lib/notebook/views.ts';
import type { NotebookStore } from '../../store/notebook-store.ts';

/** In the order in which they were added. */
export function listPeople(store: NotebookStore): Person[] {
  return store.all<Person>('SELECT personId, name, initials, role FROM person ORDER BY addedSeq', []);
}

export function findPerson(store: NotebookStore, personId: string): Person | undefined {
  return store.one<Person>('SELECT personId, name, initials, role FROM person WHERE personId = ?', [personId]) ?? undefined;
}

/** The person's name, or the id where the notebook has no such person. */
export function nameOf(store: NotebookStore, personId: string): string {
  return findPerson(store, personId)?.name ?? personId;
}
