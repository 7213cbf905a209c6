import type { Entry } from '../../shared-lib/notebook/entry.ts';
import type { RecordLookup } from './record-lookup.ts';

/** An entry that was brought in, with what it says about places in the record said for this one: they differ from bench to bench. */
export function withPlacesHere(entry: Entry, record: RecordLookup): Entry {
  if (entry.kind !== 'work.witnessed') return entry;
  const { fromSeq, toSeq } = entry.body;
  return { ...entry, body: { ...entry.body, toSeq: placeHere(entry, toSeq, record), fromSeq: placeHere(entry, fromSeq, record) } };
}

/** The place here of what had the place `seqThere` when `from` was made: the way back along its chain. */
function placeHere(from: Entry, seqThere: number, record: RecordLookup): number {
  let place = from.seq;
  for (let entry: Entry | undefined = from; entry && sealedPlace(entry) >= seqThere; entry = record.byHash(entry.previous)) place = entry.seq;
  return place;
}

function sealedPlace({ sealedSeq, seq }: Entry): number {
  return sealedSeq ?? seq;
}
