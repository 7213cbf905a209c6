import type { EntryKind } from './entry.ts';

export interface EntryLine {
  seq: number;
  id: string;
  recordedAt: string;
  occurredAt: string;
  by: string;
  kind: EntryKind;
  /** One sentence in words: what was done. */
  text: string;
  /** For corrections: before, after and reason. */
  correction: { before: string; after: string; reason: string } | null;
  sampleId: string | null;
  testId: string | null;
  /** Where else the thing opens that the entry is about: a screen and the id of the thing on it. */
  place: { screen: 'approvals' | 'plans' | 'lot' | 'material' | 'reports' | 'trials' | 'instruments' | 'methods'; id: string } | null;
  hash: string;
  /** What else is to be known about it, one sentence each: who witnessed it, that a clock went back. Absent: none. */
  marks?: string[];
}

export interface RecordView {
  /** How many entries match; `many`: this many and more, which nobody counted. */
  total: number;
  many: boolean;
  entries: EntryLine[];
}
