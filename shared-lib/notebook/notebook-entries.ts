import { z } from 'zod';

const headingSchema = z.strictObject({ title: z.string().min(1).max(200), laboratory: z.string().max(200) });

/** Entries about the notebook itself, besides that it was begun. */
export const notebookEntryBodies = {
  /** Another title or laboratory. `createdAt`: when the notebook that it is about was begun, so that it renames no other one that it is brought into. */
  'notebook.described': z.strictObject({
    createdAt: z.iso.datetime(),
    before: headingSchema,
    after: headingSchema,
    /** '' where it was only added to. */
    reason: z.string().max(20_000),
  }),
} as const;
