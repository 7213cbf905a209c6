import type { EntryNames } from '../../shared-lib/notebook/entry-names.ts';
import { describeEntry } from '../../shared-lib/notebook/entry-sentence.ts';
import type { EntryLine } from '../../shared-lib/notebook/record-view.ts';
import type { NotebookStore } from '../store/notebook-store.ts';
import { entryPlace } from './entry-place.ts';
import { correctionOf } from './corrections-of-test.ts';
import type { FoundEntry } from './queries/entries.ts';
import { benchOf } from './queries/merges.ts';
import { nameOf } from './queries/people.ts';
import { witnessesOfEntry, witnessesOfTest } from './queries/witnesses.ts';

/** An entry as the Record shows it. */
export function entryLine(store: NotebookStore, names: EntryNames, { entry, testId, sampleId }: FoundEntry): EntryLine {
  const { seq, id, recordedAt, occurredAt, by, kind, hash } = entry;
  const marks = [...benchMarks(store, entry), ...clockMarks(store, entry), ...(kind === 'work.witnessed' ? [] : witnessMarks(store, entry, testId))];
  const line = { seq, id, recordedAt, occurredAt, by: nameOf(store, by), kind, sampleId, testId, place: null, hash, marks };
  try {
    return { ...line, place: entryPlace(entry), text: describeEntry(entry, names).text, correction: correctionOf(store, names, entry) };
  } catch {
    // Somebody changed it by hand; the rest of the record must still be seen.
    return { ...line, text: 'This entry cannot be read any more.', correction: null };
  }
}

/** Of which bench it is, and its place there. */
function benchMarks(store: NotebookStore, { seq, sealedSeq }: FoundEntry['entry']): string[] {
  return sealedSeq === undefined ? [] : [`Of ${benchOf(store, seq)}, entry ${sealedSeq} there.`];
}

/** The clock of the bench where it was made: the entry before it is the one that it was sealed behind. */
function clockMarks(store: NotebookStore, { previous, recordedAt }: FoundEntry['entry']): string[] {
  const before = store.one<{ recordedAt: string }>('SELECT recordedAt FROM entry WHERE hash = ?', [previous])?.recordedAt;
  return before !== undefined && recordedAt < before ? ['The computer’s clock went back before this entry.'] : [];
}

function witnessMarks(store: NotebookStore, entry: FoundEntry['entry'], testId: string | null): string[] {
  const own = witnessesOfEntry(store, entry, testId);
  const earlier = testId === null ? [] : witnessesOfTest(store, testId).filter(({ toSeq }) => toSeq < entry.seq);
  const names = (witnesses: typeof own) => [...new Set(witnesses.map(({ personId }) => nameOf(store, personId)))].join(' and ');
  return [...(own.length > 0 ? [`Witnessed by ${names(own)}.`] : []), ...(earlier.length > 0 ? [`Later than the witness of ${names(earlier)}.`] : [])];
}
