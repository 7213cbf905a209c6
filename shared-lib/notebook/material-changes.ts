import type { Entry } from './entry.ts';
import type { materialEntryBodies } from './material-entries.ts';
import { onlyChanged } from './only-changed.ts';
import { insert, remove, set } from './table-change.ts';
import type { ChangeOf, TableName } from './tables.ts';

/** An entry about a material or lot beyond its first. */
export type MaterialEntry = Extract<Entry, { kind: keyof typeof materialEntryBodies }>;

/** What such an entry does to the tables. */
export function materialChanges(entry: MaterialEntry): ChangeOf<TableName>[] {
  switch (entry.kind) {
    case 'material.described': {
      const { materialId, before, after } = entry.body;
      const { layers, ...changed } = onlyChanged(before, after);
      return [set('material', { materialId }, { ...changed, ...(layers ? { layers: JSON.stringify(layers) } : {}) })];
    }
    case 'lot.described':
      return [set('lot', { lotId: entry.body.lotId }, onlyChanged(entry.body.before, entry.body.after))];
    case 'lot.madeFrom': {
      const { lotId, lotIds } = entry.body;
      return [remove('lot_part', { lotId }), ...lotIds.map((partId, place) => insert('lot_part', { lotId, partId, place }))];
    }
    case 'lot.retired':
      return [set('lot', { lotId: entry.body.lotId }, { retiredAt: entry.occurredAt, retiredReason: entry.body.before ?? entry.body.reason })];
    case 'lot.returned':
      return [set('lot', { lotId: entry.body.lotId }, { retiredAt: null, retiredReason: '' })];
  }
}
