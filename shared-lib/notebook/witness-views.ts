import type { EntryLine } from './record-view.ts';

/** A page of work as a second person reads it before they sign. */
export interface PageOfWork {
  /** `null`: not one test alone. */
  testId: string | null;
  /** `null`: not one person alone. */
  by: string | null;
  fromSeq: number;
  toSeq: number;
  /** Hash of entry `toSeq`. */
  chainHash: string;
  /** What it is, in words: 'Test fluids on S-014', 'the work of Imke Rasmund, entries 12 to 40'. */
  title: string;
  /** In the order in which they were made. */
  entries: EntryLine[];
  /** Who made them: none of these can be the witness. */
  authors: { personId: string; name: string }[];
  witnesses: WitnessLine[];
}

/** A signature below a page of work. */
export interface WitnessLine {
  name: string;
  at: string;
  /** 'Witnessed by Abena Quist on 2026-03-02: read and understood.' and what came later. */
  text: string;
  /** Entries on the same test that were made after it. */
  later: number;
}

/** What was undone, or why it cannot be. */
export interface UndoneView {
  text: string;
  done: boolean;
}
