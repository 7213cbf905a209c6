import type { EntryNames } from './entry-names.ts';
import type { WitnessEntry } from './witness-changes.ts';
import { ended } from './sentence.ts';

/** An entry about work that was witnessed or withdrawn, in one sentence. */
export function witnessSentence(entry: WitnessEntry, names: EntryNames): string {
  switch (entry.kind) {
    case 'work.witnessed': {
      const { testId, by, fromSeq, toSeq, signature } = entry.body;
      const span = fromSeq === toSeq ? `entry ${toSeq}` : `entries ${fromSeq} to ${toSeq}`;
      const of = testId === null ? '' : ` of ${names.test(testId)}`;
      const whose = by === null ? '' : ` by ${names.person(by)}`;
      return `${names.person(signature.personId)} ${signature.meaning}: ${span}${of}${whose}.`;
    }
    case 'test.withdrawn':
      return `Withdrew ${names.test(entry.body.testId)}: ${ended(entry.body.reason)}`;
  }
}
