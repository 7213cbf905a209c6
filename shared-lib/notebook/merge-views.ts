/** One of two entries that contradict each other. */
export interface ConflictSide {
  /** Id of the entry. */
  id: string;
  /** '' for this notebook's own. */
  bench: string;
  by: string;
  at: string;
  text: string;
}

/** What two benches entered without knowing of each other and that does not go together. */
export interface ConflictView {
  here: ConflictSide;
  there: ConflictSide;
  /** What stands since, in one sentence. */
  taken: string;
  state: 'open' | 'settled';
  /** Whether the word that gave way can be taken instead, by one correction. */
  takesOther: boolean;
  /** How it was settled, or ''. */
  settled: string;
  testId: string | null;
  sampleId: string | null;
}

/** What taking in another notebook would do. */
export interface MergePreview {
  bench: string;
  title: string;
  laboratory: string;
  /** Entries and files that are not here yet; 0: there is nothing new. */
  entries: number;
  files: number;
  /** Of those entries, how many add a person or a sample. */
  people: number;
  samples: number;
  /** How many entries both have in common. */
  common: number;
  conflicts: ConflictView[];
}

/** A notebook that was brought in. */
export interface MergeView {
  mergeId: string;
  bench: string;
  title: string;
  laboratory: string;
  /** Entries that it brought. */
  entries: number;
  mergedAt: string;
  mergedBy: string;
  conflicts: ConflictView[];
}
