import type { Entry } from './entry.ts';

/** An id as the application makes them (ULID), or the SHA-256 of a file. */
const IS_ID = /^([0-9A-Z]{26}|[0-9a-f]{64})$/;
/** Methods have ids in words. */
const MAY_NAME_A_METHOD = new Set(['methodId', 'attachedId']);

/**
 * Ids of the things that an entry speaks of, each once: a lot, an instrument, a method … Left out are its test and sample
 * (`entry_about`), and the entries that a merge names.
 */
export function entryMentions({ kind, body }: Entry): string[] {
  if (kind === 'notebook.merged') return [];
  const ids = new Set<string>();
  const look = (value: unknown, key: string) => {
    if (typeof value === 'string' && (MAY_NAME_A_METHOD.has(key) || IS_ID.test(value))) ids.add(value);
    else if (typeof value === 'object' && value !== null) for (const [inner, part] of Object.entries(value)) look(part, inner);
  };
  for (const [key, value] of Object.entries(body)) if (key !== 'testId' && key !== 'sampleId') look(value, key);
  return [...ids];
}
