import type { Entry } from '../../shared-lib/notebook/entry.ts';

/** Entries of the record that others name. */
export interface RecordLookup {
  byId(id: string): Entry | undefined;
  byHash(hash: string): Entry | undefined;
}
