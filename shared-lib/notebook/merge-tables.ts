/** Notebooks of other benches. See `tables.ts`. */
export interface MergeTables {
  /** Other notebooks that were brought in. */
  merge: { mergeId: string; bench: string; title: string; laboratory: string; count: number; mergedAt: string; mergedBy: string; seq: number };
  /** Entries of one bench that were brought in together; `forkSeq`: the last entry here that they follow, 0 for none. */
  merge_run: { firstSeq: number; lastSeq: number; forkSeq: number; bench: string };
  /** Two entries of two benches that do not go together, and the code that one of them goes by since; `settledReason`: why what was taken stands. */
  merge_conflict: {
    mergeId: string;
    here: string;
    there: string;
    taken: 'here' | 'there' | 'both';
    mark: string | null;
    settledReason: string | null;
    settledAt: string | null;
    settledBy: string | null;
  };
}
