import type { Entry } from '../../../shared-lib/notebook/entry.ts';
import type { NotebookStore } from '../../store/notebook-store.ts';

const MOST_INITIALS = 5;

/**
 * Tells the later of two things of one code apart: 'S-014' becomes 'S-014 (bench-b)', the initials IR become IR2.
 * @param stores Both notebooks: a code that either of them uses is not given again.
 */
export function codeMarker(stores: NotebookStore[], benchOf: (entry: Entry) => string): (entry: Entry, code: string) => string {
  const given = new Set<string>();
  const isFree = (kind: Entry['kind'], code: string) => {
    const sql = takenIn[kind];
    return sql === undefined || (!given.has(`${kind} ${code}`) && stores.every((store) => !store.one(sql, [code])));
  };
  return (entry, code) => {
    for (let number = 1; ; number++) {
      const marked = entry.kind === 'person.added' ? initials(code, number + 1) : `${code.slice(0, 80)} (${benchOf(entry)}${number === 1 ? '' : ` ${number}`})`;
      if (!isFree(entry.kind, marked)) continue;
      given.add(`${entry.kind} ${marked}`);
      return marked;
    }
  };
}

const takenIn: Partial<Record<Entry['kind'], string>> = {
  'person.added': 'SELECT 1 FROM person WHERE initials = ?',
  'sample.added': 'SELECT 1 FROM sample WHERE code = ?',
  'lot.added': 'SELECT 1 FROM lot WHERE code = ?',
  'report.issued': 'SELECT 1 FROM report WHERE number = ?',
};

function initials(code: string, number: number): string {
  return code.slice(0, MOST_INITIALS - String(number).length) + String(number);
}
