import type { Entry } from '../../../shared-lib/notebook/entry.ts';
import type { EntryNames } from '../../../shared-lib/notebook/entry-names.ts';
import { describeEntry } from '../../../shared-lib/notebook/entry-sentence.ts';
import { isLater } from '../../../shared-lib/notebook/merge-conflicts.ts';
import type { ConflictSide, ConflictView } from '../../../shared-lib/notebook/merge-views.ts';
import type { NotebookStore } from '../../store/notebook-store.ts';
import { nameOf } from '../queries/people.ts';
import { takeOther } from './take-other.ts';

/** Where one of both entries is read: the notebook, the names in it, and the bench that it is of. */
export interface Side {
  store: NotebookStore;
  names: EntryNames;
  entry: Entry;
  bench: string;
}

/**
 * @param mark The code that the later of two things goes by since, or `null`.
 * @param settled How, or ''; `anew`: something else was said since than what was taken.
 */
export function conflictView(here: Side, there: Side, taken: 'here' | 'there' | 'both', mark: string | null, { settled, anew }: { settled: string; anew: boolean }): ConflictView {
  return {
    here: sideView(here),
    there: sideView(there),
    taken: takenText(here, there, taken, mark, anew),
    takesOther: taken !== 'both' && takeOther(...inOrder(here.entry, there.entry, taken)) !== null,
    state: settled === '' ? 'open' : 'settled',
    settled,
    ...concerned(here.entry, there.entry),
  };
}

/** The word that stands, then the one that gave way. */
export function inOrder<Word>(here: Word, there: Word, taken: 'here' | 'there'): [stands: Word, other: Word] {
  return taken === 'here' ? [here, there] : [there, here];
}

function sideView({ store, names, entry, bench }: Side): ConflictSide {
  return { id: entry.id, bench, by: nameOf(store, entry.by), at: entry.occurredAt, text: describeEntry(entry, names).text };
}

function takenText(here: Side, there: Side, taken: 'here' | 'there' | 'both', mark: string | null, anew: boolean): string {
  if (mark !== null) {
    const later = isLater(here.entry, there.entry) ? here : there;
    return `Both stay; the later one, ${ofBench(later.bench)}, goes by ${mark}.`;
  }
  if (taken !== 'both') return `The later one ${anew ? 'stood until it was settled' : 'stands'}: ${ofBench((taken === 'here' ? here : there).bench)}.`;
  const kinds = [here.entry.kind, there.entry.kind];
  if (kinds.includes('test.finished')) return 'Both stay; the result is outdated, so the test must be finished again.';
  return kinds.includes('row.voided') ? 'Both stay; the row stays voided.' : 'Both stay under one name: give one of them another, or retire it.';
}

function ofBench(bench: string): string {
  return bench === '' ? 'of this notebook' : `of ${bench}`;
}

function concerned(here: Entry, there: Entry): { testId: string | null; sampleId: string | null } {
  const bodies = [here.body, there.body] as { testId?: string; sampleId?: string }[];
  return { testId: bodies.find(({ testId }) => testId !== undefined)?.testId ?? null, sampleId: bodies.find(({ sampleId }) => sampleId !== undefined)?.sampleId ?? null };
}
