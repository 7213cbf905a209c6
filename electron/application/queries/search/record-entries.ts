import { entryLine } from '../../entry-line.ts';
import { entryNames } from '../../entry-names.ts';
import { countEntries, findEntries } from '../entries.ts';
import { MOST_COUNTED } from './rows-kind.ts';
import type { SearchKind } from './search-kind.ts';

/** Entries of the record, as the Record screen finds them. */
export const recordEntries: SearchKind = {
  title: 'Record',
  find({ store, methods }, words, limit) {
    // A single letter begins a word of nearly every entry.
    if (words.every((word) => word.length === 1)) return { total: 0, many: false, hits: [] };
    const search = { search: words.join(' '), kind: '', by: '', testId: '', from: '', until: '' };
    const names = entryNames(store, methods);
    const hits = findEntries(store, search, limit, 0).map((found) => {
      const { id, seq, text, by, occurredAt, testId, sampleId } = entryLine(store, names, found);
      const place = testId ? { screen: 'record' as const, id: testId } : sampleId ? { screen: 'samples' as const, id: sampleId } : { screen: 'record' as const, id: '' };
      return { key: id, title: text, detail: `entry ${seq} · ${by} · ${occurredAt.slice(0, 10)}`, ...place };
    });
    return hits.length < limit ? { total: hits.length, many: false, hits } : { ...countEntries(store, search, MOST_COUNTED), hits };
  },
};
