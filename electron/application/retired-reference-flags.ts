import type { Flag } from '../../shared-lib/calculation/result.ts';
import type { Method } from '../../shared-lib/method/method.ts';
import type { NotebookStore } from '../store/notebook-store.ts';
import { dayOf } from './day-of.ts';
import { findReference } from './queries/references.ts';
import type { StoredTest } from './queries/tests.ts';

/** A test that was begun against a reference colour after it was retired counts, and says so; earlier ones stand as they are. */
export function retiredReferenceFlags(store: NotebookStore, { conditions, startedAt }: StoredTest, method: Method): Flag[] {
  return method.conditions.flatMap((field) => {
    const value = field.kind === 'item' && field.of === 'reference' ? conditions[field.key]?.value : null;
    const reference = typeof value === 'string' ? findReference(store, value) : undefined;
    if (!reference || reference.retiredAt === null || startedAt <= reference.retiredAt) return [];
    return [{ code: 'retired-reference', where: `conditions.${field.key}`, text: `Held against ${reference.name}, which was retired on ${dayOf(reference.retiredAt)}: ${reference.retiredReason}` }];
  });
}
