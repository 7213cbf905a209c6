import type { Entry } from './entry.ts';
import { outdates, writesOf } from './entry-writes.ts';
import { goesByAnother, lastCodes, type Coded, type Marked } from './merge-codes.ts';
import type { mergeEntryBodies, MergeConflict } from './merge-entries.ts';
import type { z } from 'zod';

/** What two benches said without knowing of each other. */
export interface Contradictions {
  conflicts: MergeConflict[];
  /** Later words that an earlier merge at one of the benches knew nothing of. */
  again: { word: string; against: string }[];
  /** Finished tests whose result does not stand on what both benches entered. */
  outdated: string[];
}

type Side = 'here' | 'there';

/**
 * Where entries that only one notebook had do not go with entries that only the other had. Of two words on one thing the
 * later one is taken, on whichever side: so both benches come to the same tables, whoever takes in whom.
 * @param markOf The code that tells the later of two things of one code apart.
 * @param find Any entry of either notebook by its id.
 * @param belongsTo Of a lot its material and of a trial its set, which tell their codes apart.
 */
export function findContradictions(
  here: readonly Entry[],
  there: readonly Entry[],
  markOf: (coded: Coded) => string,
  find: (id: string) => Entry | undefined,
  belongsTo: (id: string) => string,
): Contradictions {
  const again = new Map<string, Contradictions['again'][number]>();
  const pairs = new Map<string, MergeConflict>();
  const note = (one: Entry, other: Entry, both: boolean, mark: MergeConflict['mark'] = null) => {
    const key = `${one.id} ${other.id}`;
    const taken = both ? 'both' : isLater(one, other) ? 'here' : 'there';
    const known = pairs.get(key);
    if (!known || known.taken === 'both') pairs.set(key, { here: one.id, there: other.id, taken, mark: mark ?? known?.mark ?? null });
  };

  const theirs = lastWords(there, find);
  const ours = lastWords(here, find, theirs);
  for (const [about, columns] of ours) {
    for (const [column, own] of columns) {
      const other = theirs.get(about)?.get(column);
      if (!other || Object.is(own.value, other.value)) continue;
      if (!own.repeated && !other.repeated) note(own.entry, other.entry, about.startsWith('row counts'));
      else if (own.entry.id !== other.entry.id) {
        const [word, against] = isLater(own.entry, other.entry) ? [own.entry.id, other.entry.id] : [other.entry.id, own.entry.id];
        again.set(`${word} ${against}`, { word, against });
      }
    }
  }

  for (const [own, other] of calledAlike(here, there, belongsTo)) {
    const later = isLater(own.entry, other.entry) ? own : other;
    note(own.entry, other.entry, true, goesByAnother.has(later.of) ? { of: later.of as Marked, id: later.id, code: markOf(later) } : null);
  }

  const outdated = new Set<string>();
  const finishedAlone = (finishing: readonly Entry[], changing: readonly Entry[], side: Side) => {
    const changes = new Map(changing.flatMap((entry) => { const testId = outdates(entry); return testId === null ? [] : [[testId, entry] as const]; }));
    for (const entry of finishing) {
      if (entry.kind !== 'test.finished') continue;
      const change = changes.get(entry.body.testId);
      if (!change) continue;
      outdated.add(entry.body.testId);
      if (side === 'here') note(entry, change, true);
      else note(change, entry, true);
    }
  };
  finishedAlone(here, there, 'here');
  finishedAlone(there, here, 'there');

  return { conflicts: [...pairs.values()], again: [...again.values()], outdated: [...outdated] };
}

/** Whether `entry` was recorded after `other`; its id decides within one millisecond. */
export function isLater(entry: Entry, other: Entry): boolean {
  return entry.recordedAt === other.recordedAt ? entry.id > other.id : entry.recordedAt > other.recordedAt;
}

/** The words that a merge says again, each with the one that it stands against, in the order in which they were recorded. */
export function repeatedWords(
  { conflicts, again }: Pick<z.output<(typeof mergeEntryBodies)['notebook.merged']>, 'conflicts' | 'again'>,
  find: (id: string) => Entry | undefined,
): { word: Entry; against: Entry }[] {
  const taken = conflicts.flatMap(({ here, there, taken: side }) => (side === 'both' ? [] : [side === 'here' ? { word: here, against: there } : { word: there, against: here }]));
  const words = [...taken, ...again].flatMap((pair) => {
    const [word, against] = [find(pair.word), find(pair.against)];
    return word && against ? [{ word, against }] : [];
  });
  return words.sort((one, other) => (one.word.id === other.word.id ? 0 : isLater(one.word, other.word) ? 1 : -1));
}

interface Word {
  value: unknown;
  entry: Entry;
  /** A merge said it again. */
  repeated: boolean;
}

/** The last word on each column of each thing; only of `others`' things where they are given. */
function lastWords(entries: readonly Entry[], find: (id: string) => Entry | undefined, others?: ReadonlyMap<string, unknown>): Map<string, Map<string, Word>> {
  const words = new Map<string, Map<string, Word>>();
  const say = (entry: Entry, repeated: boolean, against?: Entry) => {
    const onlyAbout = against && writesOf(against);
    for (const [about, { says }] of writesOf(entry)) {
      if (others && !others.has(about)) continue;
      const columns = words.get(about) ?? new Map<string, Word>();
      for (const [column, value] of Object.entries(says)) {
        if (!onlyAbout || column in (onlyAbout.get(about)?.says ?? {})) columns.set(column, { value, entry, repeated });
      }
      if (columns.size > 0) words.set(about, columns);
    }
  };
  for (const entry of entries) {
    if (entry.kind === 'notebook.merged') for (const { word, against } of repeatedWords(entry.body, find)) say(word, true, against);
    say(entry, false);
  }
  return words;
}

/** Two things, one of each side, that go by one code or name since. */
function calledAlike(here: readonly Entry[], there: readonly Entry[], belongsTo: (id: string) => string): [own: Coded, other: Coded][] {
  const [ours, theirs] = [lastCodes(here), lastCodes(there)];
  const stands = (coded: Coded, otherSide: ReadonlyMap<string, Coded>) => {
    const other = otherSide.get(coded.id);
    return !other || isLater(coded.entry, other.entry);
  };
  const keyOf = ({ of, id, code }: Coded) => `${of} ${of === 'lot' || of === 'trial' ? belongsTo(id) : ''} ${code.toLowerCase()}`;
  const known = new Map([...theirs.values()].filter((coded) => stands(coded, ours)).map((coded) => [keyOf(coded), coded]));
  return [...ours.values()].filter((coded) => stands(coded, theirs)).flatMap((own) => {
    const other = known.get(keyOf(own));
    return other && other.id !== own.id ? [[own, other] as [Coded, Coded]] : [];
  });
}
