import type { Entry } from '../../../shared-lib/notebook/entry.ts';
import type { Coded } from '../../../shared-lib/notebook/merge-codes.ts';
import type { NotebookStore } from '../../store/notebook-store.ts';

const MOST_INITIALS = 5;

/**
 * Tells the later of two things of one code apart: 'S-014' becomes 'S-014 (bench-b)', the initials IR become IR2.
 * @param stores Both notebooks: a code that either of them uses is not given again.
 */
export function codeMarker(stores: NotebookStore[], benchOf: (entry: Entry) => string): (coded: Coded) => string {
  const given = new Set<string>();
  const isFree = (of: Coded['of'], code: string) => {
    const sql = takenIn[of];
    return sql === undefined || (!given.has(`${of} ${code}`) && stores.every((store) => !store.one(sql, [code])));
  };
  return ({ of, code, entry }) => {
    for (let number = 1; ; number++) {
      const marked = of === 'person' ? initials(code, number + 1) : `${code.slice(0, 80)} (${benchOf(entry)}${number === 1 ? '' : ` ${number}`})`;
      if (!isFree(of, marked)) continue;
      given.add(`${of} ${marked}`);
      return marked;
    }
  };
}

const takenIn: Partial<Record<Coded['of'], string>> = {
  person: 'SELECT 1 FROM person WHERE initials = ?',
  sample: 'SELECT 1 FROM sample WHERE code = ?',
  lot: 'SELECT 1 FROM lot WHERE code = ?',
  report: 'SELECT 1 FROM report WHERE number = ?',
};

function initials(code: string, number: number): string {
  return code.slice(0, MOST_INITIALS - String(number).length) + String(number);
}
