import type { Entry } from '../../shared-lib/notebook/entry.ts';
import { entryHash, FIRST_PREVIOUS } from '../../shared-lib/notebook/hash-chain.ts';
import { applyEntry } from './apply-changes.ts';
import type { RecordLookup } from './record-lookup.ts';
import type { Database } from './database.ts';
import { sha256Hex, type Batch } from './journal.ts';

/** The end of the record: how many entries, and the hash of the last. */
export interface RecordEnd {
  count: number;
  hash: string;
}

/** Entries read at a time, so that no statement stays half done while the reader works. */
const pageSize = 500;

export function recordEnd(database: Database): RecordEnd {
  const last = database.one<{ seq: number; hash: string }>('SELECT seq, hash FROM entry ORDER BY seq DESC LIMIT 1');
  return last ? { count: last.seq, hash: last.hash } : { count: 0, hash: FIRST_PREVIOUS };
}

/** Entries `from`–`to` in order. A body that is no JSON any more comes as its raw text, for the chain check to name. */
export function* readEntries(database: Database, from: number, to: number): Generator<Entry> {
  for (let start = from; start <= to; start += pageSize) {
    const rows = database.all<EntryRow>('SELECT * FROM entry WHERE seq BETWEEN ? AND ? ORDER BY seq', [
      start,
      Math.min(to, start + pageSize - 1),
    ]);
    for (const row of rows) yield entryOf(row);
  }
}

/** The entries of the record by what others name them by. */
export function lookUpIn(database: Database): RecordLookup {
  const found = (column: 'id' | 'hash', key: string) => {
    const row = database.one<EntryRow>(`SELECT * FROM entry WHERE ${column} = ?`, [key]);
    return row && entryOf(row);
  };
  return { byId: (id) => found('id', id), byHash: (hash) => found('hash', hash) };
}

/** Adds a batch to the record and to the tables; inside a transaction. */
export function addBatch(database: Database, batch: Batch): void {
  for (const { sha256, bytes } of batch.attachments) {
    database.run('INSERT INTO attachment_content (sha256, bytes) VALUES (?, ?) ON CONFLICT DO NOTHING', [sha256, bytes]);
  }
  let { count } = recordEnd(database);
  for (const entry of batch.brought ?? []) addEntry(database, { ...entry, seq: ++count, sealedSeq: entry.seq });
  for (const entry of batch.entries) addEntry(database, entry);
}

function addEntry(database: Database, entry: Entry): void {
  database.run(
    'INSERT INTO entry (seq, id, kind, body, "by", occurredAt, recordedAt, previous, hash, sealedSeq) VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?)',
    [entry.seq, entry.id, entry.kind, JSON.stringify(entry.body), entry.by, entry.occurredAt, entry.recordedAt, entry.previous, entry.hash, entry.sealedSeq ?? null],
  );
  applyEntry(database, entry, lookUpIn(database));
}

/**
 * Adds the batches of a journal that the record does not hold yet.
 * @returns how many entries were added, and why it had to stop, or ''.
 */
export function replay(database: Database, batches: Batch[]): { added: number; stopped: string } {
  let added = 0;
  for (const batch of batches) {
    const stopped = misfit(database, batch);
    if (stopped === 'known') continue;
    if (stopped !== '') return { added, stopped };
    try {
      database.transaction(() => addBatch(database, batch));
    } catch {
      return { added, stopped: `${nameOf(batch)} does not fit the notebook` };
    }
    added += (batch.brought?.length ?? 0) + batch.entries.length;
  }
  return { added, stopped: '' };
}

/** 'known' when the record holds the batch already (killed between writing the file and clearing the journal). */
function misfit(database: Database, batch: Batch): 'known' | string {
  let end = recordEnd(database);
  const brought = batch.brought ?? [];
  const first = batch.entries[0];
  if (first && first.seq <= end.count) {
    const known = [...brought, ...batch.entries].every(({ id, hash }) => database.one('SELECT 1 FROM entry WHERE id = ? AND hash = ?', [id, hash]));
    return known ? 'known' : `entry ${first.seq} of the journal is another one than in the file`;
  }
  if (brought.some((entry) => entryHash(entry) !== entry.hash)) return 'an entry of another bench in the journal was changed';
  end = { count: end.count + brought.length, hash: end.hash };
  for (const entry of batch.entries) {
    if (entry.seq !== end.count + 1 || entry.previous !== end.hash || entryHash(entry) !== entry.hash) {
      return `entry ${entry.seq} of the journal does not follow on entry ${end.count} of the file`;
    }
    end = { count: entry.seq, hash: entry.hash };
  }
  return batch.attachments.every(({ sha256, bytes }) => sha256Hex(bytes) === sha256) ? '' : `an attachment of ${nameOf(batch)} was changed`;
}

/** Files of a notebook that was brought in go ahead of its entries. */
function nameOf({ entries: [first] }: Batch): string {
  return first ? `entry ${first.seq}` : 'another bench';
}

type EntryRow = Record<Exclude<keyof Entry, 'sealedSeq'>, string | number> & { sealedSeq: number | null };

function entryOf({ sealedSeq, ...row }: EntryRow): Entry {
  return { ...row, ...(sealedSeq === null ? {} : { sealedSeq }), body: bodyOf(String(row.body)) } as unknown as Entry;
}

function bodyOf(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return text;
  }
}
