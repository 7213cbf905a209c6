import { describe, expect, test } from 'vitest';
import { project } from '../../../shared-lib/notebook/project.ts';
import { entryBodies, type DraftEntry, type Entry, type EntryKind } from '../../../shared-lib/notebook/entry.ts';
import { tableKeys, tableNames } from '../../../shared-lib/notebook/tables.ts';
import { oneOfEach } from './one-of-each.ts';

const at = '2025-05-03T10:42:07.000Z';
const place = { seq: 7, id: 'e7', recordedAt: at, previous: '', hash: '' };
const entryOf = (draft: DraftEntry) => ({ ...draft, ...place }) as Entry;

describe('project', () => {
  test('is tested here with every kind of entry', () => {
    expect(oneOfEach.map(({ kind }) => kind).sort()).toEqual(Object.keys(entryBodies).sort());
    for (const draft of oneOfEach) expect(entryBodies[draft.kind].safeParse(draft.body).success, draft.kind).toBe(true);
  });

  test.each(oneOfEach)('$kind: names keys for what it puts, and says what it is about', (draft) => {
    const changes = project(entryOf(draft));
    for (const change of changes) {
      expect(tableNames).toContain(change.table);
      if (change.change === 'put' || change.change === 'insert') {
        expect(Object.keys(change.row)).toEqual(expect.arrayContaining([...tableKeys[change.table]]));
      } else {
        expect(Object.keys(change.where).length).toBeGreaterThan(0);
      }
    }
    expect(changes.at(-1)).toMatchObject({ change: 'insert', table: 'entry_about', row: { seq: 7 } });
  });

  test('gives the same changes each time and does not touch the entry', () => {
    for (const draft of oneOfEach) {
      const entry = Object.freeze({ ...entryOf(draft), body: Object.freeze(draft.body) }) as Entry;
      expect(project(entry)).toEqual(project(entry));
    }
  });

  /** A stored result no longer follows from the readings after any of these. */
  const outdating: EntryKind[] = [
    'limits.set',
    'condition.entered',
    'condition.corrected',
    'reading.entered',
    'reading.corrected',
    'row.voided',
    'row.restored',
    'trace.read',
    'photo.measured',
    'spectrum.read',
    'notebook.merged',
  ];
  test.each(oneOfEach)('$kind makes a finished test outdated exactly when it changes what the result stands on', (draft) => {
    const outdates = project(entryOf(draft)).some(
      (change) => change.change === 'set' && change.table === 'test' && change.values.state === 'outdated' && change.where.state === 'finished',
    );
    expect(outdates).toBe(outdating.includes(draft.kind));
  });

  test('counts a correction up, and an entry of a new value not', () => {
    const added = (kind: EntryKind) => {
      const change = project(entryOf(oneOfEach.find((draft) => draft.kind === kind)!)).find(({ table }) => table === 'reading');
      return change?.change === 'put' ? change.add : null;
    };
    expect(added('reading.entered')).toEqual({ corrections: 0 });
    expect(added('reading.corrected')).toEqual({ corrections: 1 });
  });
});
