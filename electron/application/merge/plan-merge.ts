import type { Entry } from '../../../shared-lib/notebook/entry.ts';
import { FIRST_PREVIOUS } from '../../../shared-lib/notebook/hash-chain.ts';
import { findContradictions } from '../../../shared-lib/notebook/merge-conflicts.ts';
import type { BroughtRun, MergeConflict } from '../../../shared-lib/notebook/merge-entries.ts';
import type { NotebookStore } from '../../store/notebook-store.ts';
import { benchOf } from '../queries/merges.ts';
import { Refusal } from '../refusal.ts';
import { benchName } from './bench-name.ts';
import { codeMarker } from './code-marker.ts';

/** What taking in another notebook would do; made without changing either. */
export interface MergePlan {
  /** Entries that are not known here, as they were sealed, in the order in which they count there. */
  brought: Entry[];
  runs: BroughtRun[];
  conflicts: MergeConflict[];
  again: { word: string; against: string }[];
  outdated: string[];
  /** Files that they announce and that are not here: SHA-256. */
  files: string[];
}

interface Line {
  seq: number;
  id: string;
  hash: string;
}

/**
 * Unites two records by the ids of their entries.
 * @returns `brought` empty when there is nothing new: everything is known here, or all that is new is that they took ours in.
 * @throws Refusal when one entry stands differently in both.
 */
export function planMerge(store: NotebookStore, other: NotebookStore): MergePlan {
  const known = linesOf(store);
  const theirs = linesOf(other);
  for (const { id, hash, seq } of theirs.values()) {
    const own = known.get(id);
    if (own && own.hash !== hash) {
      throw new Refusal('conflict', `Entry ${own.seq} of this notebook and entry ${seq} of ${benchName(other)} are one entry, but do not say the same: one of them was changed. Nothing was brought in.`);
    }
  }
  const unknown = [...theirs.values()].filter(({ id }) => !known.has(id)).map(({ seq }) => read(other, seq));
  if (unknown.every(({ kind }) => kind === 'notebook.merged')) return { brought: [], runs: [], conflicts: [], again: [], outdated: [], files: [] };
  const onlyHere = [...known.values()].filter(({ id }) => !theirs.has(id)).map(({ seq }) => read(store, seq));
  const benches = new Map([...onlyHere.map((entry) => [entry.id, benchOf(store, entry.seq) || benchName(store)] as const), ...unknown.map((entry) => [entry.id, benchOf(other, entry.seq) || benchName(other)] as const)]);
  const placeOf = new Map([...known.values()].map(({ hash, seq }) => [hash, seq]));
  const brought = unknown.map(asSealed);
  return {
    brought,
    runs: runsOf(brought, (entry) => benches.get(entry.id)!, placeOf, store.entryCount),
    ...findContradictions(onlyHere, brought, codeMarker([store, other], (entry) => benches.get(entry.id)!), (id) => store.entry(id) ?? other.entry(id), (id) => belongsTo(store, id) || belongsTo(other, id)),
    files: missingFiles(store, brought),
  };
}

function linesOf(store: NotebookStore): Map<string, Line> {
  return new Map(store.all<Line>('SELECT seq, id, hash FROM entry ORDER BY seq').map((line) => [line.id, line]));
}

function read(store: NotebookStore, seq: number): Entry {
  const [entry] = store.entries(seq, seq);
  return entry!;
}

/** The material of a lot, the set of a trial; '' for anything else. */
function belongsTo(store: NotebookStore, id: string): string {
  return store.one<{ of: string }>('SELECT materialId AS "of" FROM lot WHERE lotId = ?1 UNION ALL SELECT trialSetId FROM trial WHERE trialId = ?1', [id])?.of ?? '';
}

function asSealed({ sealedSeq, ...entry }: Entry): Entry {
  return { ...entry, seq: sealedSeq ?? entry.seq };
}

/** Entries that follow one on another, at one bench. `placeOf`: of the entries here, by their hash. */
function runsOf(brought: Entry[], benchOfEntry: (entry: Entry) => string, placeOf: ReadonlyMap<string, number>, count: number): BroughtRun[] {
  const runs: BroughtRun[] = [];
  const places = new Map(placeOf);
  for (const [index, entry] of brought.entries()) {
    const run = runs.at(-1);
    const bench = benchOfEntry(entry);
    if (run && run.head === entry.previous && run.bench === bench) Object.assign(run, { head: entry.hash, count: run.count + 1 });
    else runs.push({ bench, forkSeq: entry.previous === FIRST_PREVIOUS ? 0 : (places.get(entry.previous) ?? 0), forkHash: entry.previous, head: entry.hash, count: 1 });
    places.set(entry.hash, count + index + 1);
  }
  return runs;
}

function missingFiles(store: NotebookStore, brought: Entry[]): string[] {
  const announced = new Set(brought.flatMap((entry) => (entry.kind === 'attachment.added' ? [entry.body.sha256] : [])));
  return [...announced].filter((sha256) => !store.one('SELECT 1 FROM attachment_content WHERE sha256 = ?', [sha256]));
}
