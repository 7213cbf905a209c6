import { z } from 'zod';
import { habitSchema } from '../method/in-house/habit.ts';
import { methodOriginSchema, writtenMethodSchema } from '../method/in-house/written-method.ts';

const id = z.string().min(1).max(64);
const longText = z.string().max(20_000);
const version = z.string().regex(/^[1-9]\d{0,5}$/);

/** Entries about in-house methods. A version that stands in the record is never changed: what changes is a new version. */
export const inHouseEntryBodies = {
  /** A test as people make it today; said again, it takes the place of what was said before. */
  'habit.described': z.strictObject({ methodId: id, habit: habitSchema }),
  'inHouseMethod.added': z.strictObject({
    methodId: id,
    version,
    written: writtenMethodSchema,
    /** Of a method that was taken in from a file. */
    origin: methodOriginSchema.nullable(),
  }),
  /** The version that new tests take from now on; running ones keep theirs. Brings a retired method back into use. */
  'inHouseMethod.versioned': z.strictObject({
    methodId: id,
    version,
    written: writtenMethodSchema,
    origin: methodOriginSchema.nullable(),
    /** What is different, one sentence each. */
    changes: z.array(z.string().max(2000)).max(500),
    reason: longText.min(1),
  }),
  /** No new test is started by it; those that there are stay as they are. */
  'inHouseMethod.retired': z.strictObject({ methodId: id, reason: longText.min(1) }),
} as const;
