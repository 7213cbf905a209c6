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
 * Recomputes the chain from its first entry on, and the chains of other benches that were brought in, from where they part
 * to the heads that the merge sealed.
 * @returns every break, in the order of the entries; empty when all holds. Each entry is judged against its own stored hash,
 *   so one changed entry does not put all the later ones under suspicion.
 */
export function verifyChain(entries: Iterable<Entry>): ChainProblem[] {
  const problems: ChainProblem[] = [];
  /** The last entry, and the last one that is not brought in: its chain goes on from there. */
  let lastSeq = 0;
  let own: { seq: number; hash: string } = { seq: 0, hash: FIRST_PREVIOUS };
  let brought: Entry[] = [];
  for (const entry of entries) {
    const named = nameOf(entry);
    if (entry.seq !== lastSeq + 1) {
      problems.push({ seq: entry.seq, kind: 'order', text: `${named} comes after entry ${lastSeq}: ${orderText(lastSeq, entry.seq)}.` });
    }
    lastSeq = entry.seq;
    if (recomputedHash(entry) !== entry.hash) {
      problems.push({ seq: entry.seq, kind: 'content', text: `${named} was changed after it was written: its content does not match its hash.` });
    }
    if (entry.sealedSeq !== undefined) {
      brought.push(entry);
      continue;
    }
    if (entry.previous !== own.hash) {
      const expected = own.seq === 0 ? 'the beginning of the record' : `entry ${own.seq} as it stands here`;
      problems.push({ seq: entry.seq, kind: 'link', text: `${named} was not written after ${expected}: an entry before it was replaced, removed or added.` });
    }
    problems.push(...broughtProblems(brought, entry));
    brought = [];
    own = entry;
  }
  if (brought.length > 0) problems.push({ seq: brought[0]!.seq, kind: 'link', text: unsealed(brought) });
  return problems;
}

/** Whether `brought` is what the merge behind it sealed, run by run. */
function broughtProblems(brought: Entry[], merge: Entry): ChainProblem[] {
  const runs = merge.kind === 'notebook.merged' && Array.isArray((merge.body as { runs?: unknown } | null)?.runs) ? merge.body.runs : [];
  const sealed = runs.reduce((sum, run) => sum + run.count, 0);
  if (sealed === 0) return brought.length === 0 ? [] : [{ seq: brought[0]!.seq, kind: 'link', text: unsealed(brought) }];
  if (sealed !== brought.length) {
    return [{ seq: merge.seq, kind: 'order', text: `${nameOf(merge)} sealed ${sealed} entries of other benches, but ${brought.length} stand before it.` }];
  }
  const problems: ChainProblem[] = [];
  let next = 0;
  for (const { forkHash, head, count, bench } of runs) {
    let previous = forkHash;
    for (const entry of brought.slice(next, next + count)) {
      if (entry.previous !== previous) {
        problems.push({ seq: entry.seq, kind: 'link', text: `${nameOf(entry)} of ${bench} was not written after the entry before it: one was replaced, removed or added.` });
      }
      previous = entry.hash;
    }
    next += count;
    if (previous !== head) problems.push({ seq: brought[next - 1]!.seq, kind: 'link', text: `${nameOf(brought[next - 1]!)} of ${bench} is not the one that entry ${merge.seq} sealed.` });
  }
  return problems;
}

function nameOf(entry: Entry): string {
  return `Entry ${entry.seq} (${entry.kind}, recorded ${entry.recordedAt})`;
}

function unsealed(brought: Entry[]): string {
  const [first, last] = [brought[0]!.seq, brought.at(-1)!.seq];
  return first === last
    ? `Entry ${first} is said to be of another bench, but no merge sealed it.`
    : `Entries ${first} to ${last} are said to be of another bench, but no merge sealed them.`;
}

/** The hash that an entry must have. @throws InputError when it holds something that cannot be recorded. */
export function entryHash(entry: Entry): string {
  const { hash: _, sealedSeq, ...sealed } = entry;
  return hashText(canonicalJson({ ...sealed, seq: sealedSeq ?? sealed.seq }));
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
