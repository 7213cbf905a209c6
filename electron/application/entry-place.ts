import type { Entry } from '../../shared-lib/notebook/entry.ts';
import type { EntryLine } from '../../shared-lib/notebook/record-view.ts';

type Screen = NonNullable<EntryLine['place']>['screen'];

/** By the field of an entry that names the thing; where several do, the first: a lot before its material. */
const screens: [field: string, screen: Screen][] = [
  ['approvalId', 'approvals'],
  ['planId', 'plans'],
  ['lotId', 'lot'],
  ['materialId', 'material'],
  ['reportId', 'reports'],
  ['trialSetId', 'trials'],
  ['instrumentId', 'instruments'],
  ['fluidId', 'instruments'],
  ['methodId', 'methods'],
];

/** Where the thing opens that an entry is about, where that is neither a test nor a sample. */
export function entryPlace({ kind, body }: Entry): EntryLine['place'] {
  const named: Record<string, unknown> = kind === 'attachment.linked' || kind === 'attachment.unlinked' ? { [`${body.attachedTo}Id`]: body.attachedId } : body;
  for (const [field, screen] of screens) {
    const id = named[field];
    if (typeof id === 'string') return { screen, id };
  }
  return null;
}
