import type { Entry } from '../../../shared-lib/notebook/entry.ts';
import { writesOf } from '../../../shared-lib/notebook/entry-writes.ts';
import { codeColumns, codesSaid, goesByAnother } from '../../../shared-lib/notebook/merge-codes.ts';
import type { NotebookStore } from '../../store/notebook-store.ts';

/**
 * The entry behind the merge that says anew what `here` and `there` contradict each other about: a correction of the cell,
 * other limits, the test finished again.
 */
export function settledBy(store: NotebookStore, mergeSeq: number, here: Entry, there: Entry): Entry | undefined {
  const contested = contestedWords(here, there);
  for (const entry of laterEntries(store, mergeSeq, here, there)) {
    for (const [about, { says }] of writesOf(entry)) {
      if (Object.keys(says).some((column) => contested.has(`${about} ${column}`))) return entry;
    }
  }
  return undefined;
}

function contestedWords(here: Entry, there: Entry): Set<string> {
  const finished = [here, there].find(({ kind }) => kind === 'test.finished');
  if (finished && here.kind !== there.kind) return words(finished, ['finishedAt']);
  const [ours, theirs] = [words(here), words(there)];
  const shared = new Set([...ours].filter((word) => theirs.has(word)));
  if (shared.size > 0) return shared;
  return new Set([...calledOtherwise(here), ...calledOtherwise(there)]);
}

/** Two things of one name are told apart once one of them is called otherwise; where both stay under it, also once one is retired. */
function calledOtherwise(entry: Entry): string[] {
  return codesSaid(entry).flatMap(({ of, id }) => {
    const about = [...writesOf(entry).keys()].find((thing) => thing.split(' ')[1] === id);
    return [...codeColumns[of], ...(goesByAnother.has(of) ? [] : ['retiredAt', 'retired'])].map((column) => `${about} ${column}`);
  });
}

function words(entry: Entry, only?: readonly string[]): Set<string> {
  return new Set([...writesOf(entry)].flatMap(([about, { says }]) => Object.keys(says).filter((column) => !only || only.includes(column)).map((column) => `${about} ${column}`)));
}

function laterEntries(store: NotebookStore, mergeSeq: number, here: Entry, there: Entry): Entry[] {
  const testId = 'testId' in here.body ? here.body.testId : undefined;
  const seqs =
    testId === undefined
      ? store.all<{ seq: number }>('SELECT seq FROM entry WHERE seq > ? AND (kind GLOB ? OR kind GLOB ?) ORDER BY seq', [mergeSeq, `${thingOf(here)}.*`, `${thingOf(there)}.*`])
      : store.all<{ seq: number }>('SELECT seq FROM entry_about WHERE testId = ? AND seq > ? ORDER BY seq', [testId, mergeSeq]);
  return seqs.flatMap(({ seq }) => [...store.entries(seq, seq)]);
}

/** 'sample' of 'sample.added'. */
function thingOf({ kind }: Entry): string {
  return kind.split('.')[0]!;
}
