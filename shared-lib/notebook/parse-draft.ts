import { z } from 'zod';
import { parseInput } from '../calculation/calculation.ts';
import { entryBodies, type DraftEntry, type EntryKind } from './entry.ts';

const kinds = Object.keys(entryBodies) as EntryKind[];

const frame = z.object({ kind: z.enum(kinds) });

/** Made once: making a schema costs more than using it. */
const drafts = new Map<EntryKind, z.ZodType>(
  kinds.map((kind) => [
    kind,
    z.strictObject({ kind: z.literal(kind), body: entryBodies[kind], by: z.string().min(1).max(64), occurredAt: z.iso.datetime() }),
  ]),
);

/**
 * Takes only what an entry may hold: the body by the schema of its kind, no further fields.
 * @throws InputError for the first field at fault, e.g. `body.value`.
 */
export function parseDraft(draft: unknown): DraftEntry {
  const { kind } = parseInput(frame, draft);
  return parseInput(drafts.get(kind)!, draft) as DraftEntry;
}
