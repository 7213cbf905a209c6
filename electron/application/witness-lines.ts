import type { WitnessLine } from '../../shared-lib/notebook/witness-views.ts';
import type { NotebookStore } from '../store/notebook-store.ts';
import { nameOf } from './queries/people.ts';
import { entriesAfter, witnessesOfTest, type StoredWitness } from './queries/witnesses.ts';

/** Who has read the test or a part of it and signed, with what came later. */
export function witnessLines(store: NotebookStore, testId: string): WitnessLine[] {
  return witnessesOfTest(store, testId).map((witness) => witnessLine(store, witness, entriesAfter(store, testId, witness.toSeq)));
}

/** @param later entries on the same test after the page */
export function witnessLine(store: NotebookStore, { personId, meaning, at, toSeq }: StoredWitness, later: number): WitnessLine {
  const name = nameOf(store, personId);
  const since = later === 0 ? '' : later === 1 ? ' One entry on this test is later than the witness.' : ` ${later} entries on this test are later than the witness.`;
  return { name, at, text: `Witnessed by ${name} on ${at.slice(0, 10)} (${meaning}, up to entry ${toSeq}).${since}`, later };
}
