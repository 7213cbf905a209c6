import { sha256 } from '@noble/hashes/sha2.js';
import { bytesToHex, utf8ToBytes } from '@noble/hashes/utils.js';
import { canonicalJson } from './canonical-json.ts';
import type { DraftEntry, Entry } from './entry.ts';

/** `previous` of the first entry. */
export const FIRST_PREVIOUS = '0'.repeat(64);

/** What the store gives to a draft. */
export type EntryPlace = Pick<Entry, 'seq' | 'id' | 'recordedAt' | 'previous'>;

/** One break in the chain: which entry, what kind of break, and a sentence that says how it differs. */
export interface ChainProblem {
  seq: number;
  /** `content`: changed after it was sealed; `link`: does not follow on the entry before; `order`: a number is missing or twice. */
  kind: 'content' | 'link' | 'order';
  text: string;
}

/**
 * Gives a draft its place in the record and seals it: hash = SHA-256 (hex) over the RFC 8785 form of everything else.
 * The entry is a fresh copy: what JSON writes is what it holds (−0 becomes 0).
 * @throws InputError when the body holds something that cannot be recorded.
 */
export function sealEntry(draft: DraftEntry, place: EntryPlace): Entry {
  const text = canonicalJson({
    seq: place.seq,
    id: place.id,
    recordedAt: place.recordedAt,
    previous: place.previous,
    kind: draft.kind,
    body: draft.body,
    by: draft.by,
    occurredAt: draft.occurredAt,
  });
  return { ...(JSON.parse(text) as Omit<Entry, 'hash'>), hash: hashText(text) } as Entry;
}

/**
 * Recomputes the chain from its first entry on.
 * @returns every break, in the order of the entries; empty when the chain holds. Each entry is judged against its own
 *   stored hash, so one changed entry does not put all the later ones under suspicion.
 */
export function verifyChain(entries: Iterable<Entry>): ChainProblem[] {
  const problems: ChainProblem[] = [];
  let last: { seq: number; hash: string } = { seq: 0, hash: FIRST_PREVIOUS };
  for (const entry of entries) {
    const named = `Entry ${entry.seq} (${entry.kind}, recorded ${entry.recordedAt})`;
    if (entry.seq !== last.seq + 1) {
      problems.push({ seq: entry.seq, kind: 'order', text: `${named} comes after entry ${last.seq}: ${orderText(last.seq, entry.seq)}.` });
    }
    if (recomputedHash(entry) !== entry.hash) {
      problems.push({ seq: entry.seq, kind: 'content', text: `${named} was changed after it was written: its content does not match its hash.` });
    }
    if (entry.previous !== last.hash) {
      const expected = last.seq === 0 ? 'the beginning of the record' : `entry ${last.seq} as it stands here`;
      problems.push({ seq: entry.seq, kind: 'link', text: `${named} was not written after ${expected}: an entry before it was replaced, removed or added.` });
    }
    last = entry;
  }
  return problems;
}

/** The hash that an entry must have. @throws InputError when it holds something that cannot be recorded. */
export function entryHash(entry: Entry): string {
  const { hash: _, ...sealed } = entry;
  return hashText(canonicalJson(sealed));
}

/** An entry that cannot even be written as JSON was not sealed as it stands: no hash matches it. */
function recomputedHash(entry: Entry): string | null {
  try {
    return entryHash(entry);
  } catch {
    return null;
  }
}

function orderText(lastSeq: number, seq: number): string {
  if (seq <= lastSeq) return 'the numbers do not rise';
  return seq === lastSeq + 2 ? `entry ${lastSeq + 1} is missing` : `entries ${lastSeq + 1} to ${seq - 1} are missing`;
}

function hashText(text: string): string {
  return bytesToHex(sha256(utf8ToBytes(text)));
}
