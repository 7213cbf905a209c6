import { z } from 'zod';
import { parseInput } from '../calculation/calculation.ts';
import { entryBodies, type DraftEntry, type EntryKind } from './entry.ts';

const kinds = Object.keys(entryBodies) as EntryKind[];

const frame = z.strictObject({
  kind: z.enum(kinds),
  body: z.unknown(),
  by: z.string().min(1).max(64),
  occurredAt: z.iso.datetime(),
});

/**
 * Takes only what an entry may hold: the body by the schema of its kind, no further fields.
 * @throws InputError for the first field at fault, e.g. `body.value`.
 */
export function parseDraft(draft: unknown): DraftEntry {
  const { kind } = parseInput(frame, draft);
  return parseInput(frame.extend({ body: entryBodies[kind] as z.ZodType }), draft) as DraftEntry;
}
