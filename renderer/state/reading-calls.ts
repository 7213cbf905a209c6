import type { CallName } from '../../shared-lib/api.ts';

/** Calls that add nothing to the record. */
const readingCalls: ReadonlySet<CallName> = new Set<CallName>([
  'session.get',
  'materials.list',
  'samples.list',
  'sample.get',
  'methods.list',
  'today.get',
  'test.get',
  'trace.preview',
  'tests.list',
  'reports.list',
  'report.preview',
  'report.content',
  'report.pdf',
  'record.list',
  'record.verify',
]);

export function isReading(name: CallName): boolean {
  return readingCalls.has(name);
}
