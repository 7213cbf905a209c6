import type { Property } from '../../../shared-lib/method/method.ts';
import type { OpenNotebook } from '../open-notebook.ts';

/** A sentence where tests stand side by side that were made by versions of a method that read differently; else ''. */
export function versionsApart({ store, methods }: OpenNotebook, methodId: string, { key, title }: Property, tests: readonly { testId: string }[]): string {
  if (!methods.inHouse(methodId)) return '';
  const versions = store.all<{ methodVersion: string }>('SELECT DISTINCT methodVersion FROM test WHERE testId IN (SELECT value FROM json_each(?))', [JSON.stringify(tests.map(({ testId }) => testId))]);
  const [first, ...others] = versions.map(({ methodVersion }) => methodVersion).sort((a, b) => Number(a) - Number(b));
  if (first === undefined || others.every((version) => methods.measuresAlike(methodId, key, first, version))) return '';
  return `${title}: tests by the versions ${first} and ${others.join(', ')} of the method stand side by side, and these do not read in the same way; a difference may come from that.`;
}
