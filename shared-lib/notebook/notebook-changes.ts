import type { Entry } from './entry.ts';
import type { notebookEntryBodies } from './notebook-entries.ts';
import { put } from './table-change.ts';
import type { ChangeOf, TableName } from './tables.ts';

/** An entry about the notebook itself. */
export type NotebookEntry = Extract<Entry, { kind: keyof typeof notebookEntryBodies }>;

/** What such an entry does to the tables. */
export function notebookChanges({ body: { createdAt, after } }: NotebookEntry): ChangeOf<TableName>[] {
  return [put('notebook_heading', { createdAt, ...after })];
}
