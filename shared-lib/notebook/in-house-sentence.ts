import type { MethodOrigin } from '../method/in-house/written-method.ts';
import type { EntryNames } from './entry-names.ts';
import type { InHouseEntry } from './in-house-changes.ts';
import { ended } from './sentence.ts';

/** An entry about an in-house method in one sentence. */
export function inHouseSentence(entry: InHouseEntry, names: EntryNames): string {
  switch (entry.kind) {
    case 'habit.described': {
      const { title, answers } = entry.body.habit;
      const varies = answers.filter((answer) => answer.varies).length;
      return `Described the habit “${title}”, in which ${varies === 0 ? 'nothing is said to vary' : `${varies} ${varies === 1 ? 'thing varies' : 'things vary'}`}.`;
    }
    case 'inHouseMethod.added': {
      const { written, version, origin } = entry.body;
      return origin ? `Took in the method “${written.title}” as version ${version}${from(origin)}.` : `Wrote down the method “${written.title}”.`;
    }
    case 'inHouseMethod.versioned': {
      const { written, version, changes, reason, origin } = entry.body;
      const what = changes.length === 0 ? '' : ` ${changes.join(' ')}`;
      return `Wrote version ${version} of “${written.title}”${origin ? from(origin) : ''}: ${ended(reason)}${what}`;
    }
    case 'inHouseMethod.retired':
      return `Retired the method ${names.method(entry.body.methodId)}: ${ended(entry.body.reason)}`;
  }
}

function from({ laboratory, notebook, version }: MethodOrigin): string {
  return `, version ${version} of ${laboratory || notebook || 'another notebook'}`;
}
