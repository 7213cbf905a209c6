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
  'work.page',
  'trialSets.list',
  'trialSet.get',
  'trialSet.plan',
  'trialSet.equivalence',
  'trialSet.factorView',
  'trialSet.tradeOff',
  'formulation.calculate',
  'studies.list',
  'study.get',
  'controlCharts.list',
  'controlChart.get',
  'method.get',
  'inHouseMethods.list',
  'inHouseMethod.get',
  'methodFile.write',
  'methodFile.inspect',
  'attachments.list',
  'attachments.counts',
  'attachment.picture',
  'attachment.get',
  'photo.preview',
  'references.list',
  'items.find',
  'spectra.preview',
]);

export function isReading(name: CallName): boolean {
  return readingCalls.has(name);
}
