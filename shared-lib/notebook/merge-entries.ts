import { z } from 'zod';

const id = z.string().min(1).max(64);
const shortText = z.string().max(200);
const hash = z.string().length(64);
const whole = z.number().int().nonnegative();

/** Entries of one bench that follow one on another, sealed by the hash of the last. */
export const broughtRunSchema = z.strictObject({
  bench: shortText,
  /** Place here of the entry that the first of them follows, and its hash; 0 and 64 zeros where the chains never met. */
  forkSeq: whole,
  forkHash: hash,
  head: hash,
  count: whole.min(1),
});

/** Two entries of two benches that knew nothing of each other and do not go together. */
export const mergeConflictSchema = z.strictObject({
  /** Ids of the entries: in the notebook that took the other one in, and in the other. */
  here: id,
  there: id,
  /** Whose word stands in the tables since; `both` where nothing had to give way. */
  taken: z.enum(['here', 'there', 'both']),
  /** A code given twice: what is called otherwise from now on. */
  mark: z.strictObject({ of: z.enum(['sample', 'lot', 'report', 'person']), id, code: shortText }).nullable(),
});

/** Entries about notebooks that are brought together. */
export const mergeEntryBodies = {
  /** Seals the entries of another notebook, which stand right before this one in the record. */
  'notebook.merged': z.strictObject({
    mergeId: id,
    /** The other notebook: its file without the ending, and what it calls itself. */
    bench: shortText,
    title: shortText,
    laboratory: shortText,
    runs: z.array(broughtRunSchema).min(1).max(100_000),
    conflicts: z.array(mergeConflictSchema).max(100_000),
    /** Words that another bench's merge would take back though they are later, or were later there: said again, no conflict. */
    again: z.array(z.strictObject({ word: id, against: id })).max(100_000),
    /** Finished tests whose result does not stand on what both benches entered. */
    outdated: z.array(id).max(100_000),
  }),
  /** What was taken stands, because. */
  'conflict.settled': z.strictObject({ mergeId: id, here: id, there: id, reason: z.string().min(1).max(20_000) }),
} as const;

export type BroughtRun = z.output<typeof broughtRunSchema>;
export type MergeConflict = z.output<typeof mergeConflictSchema>;
