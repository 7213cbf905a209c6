import type { ParsedInput } from '../../../shared-lib/api.ts';
import type { Calculation } from '../../../shared-lib/calculation/calculation.ts';
import type { Method } from '../../../shared-lib/method/method.ts';
import type { VerdictWord } from '../../../shared-lib/method/property-verdict.ts';
import type { ReportLine } from '../../../shared-lib/notebook/views.ts';
import type { ReportContent } from '../../../shared-lib/report/content.ts';
import { assembleReport, type ReportTest } from '../../../shared-lib/report/assemble.ts';
import { calculationById } from '../../../shared-lib/registry/calculations.ts';
import { attachmentDraft } from '../attachment-draft.ts';
import { benchSheet } from '../bench-sheet.ts';
import { correctionsOfTest } from '../corrections-of-test.ts';
import { dayOf } from '../day-of.ts';
import type { OpenNotebook } from '../open-notebook.ts';
import { lotPlacesOfSample } from '../queries/lots.ts';
import { lotsRetiredSinceIssue } from '../queries/lots-retired-since.ts';
import { notebookHeading } from '../queries/notebook-heading.ts';
import { nameOf } from '../queries/people.ts';
import { findReport, listReports, nextReportNumber, type StoredReport } from '../queries/reports.ts';
import { findSample } from '../queries/samples.ts';
import { loadTest } from '../queries/tests.ts';
import { Refusal } from '../refusal.ts';
import { reportPicture } from '../report-pictures.ts';
import { sameResults } from '../same-results.ts';
import type { Workplace } from '../workplace.ts';

export function reportsList({ notebook }: Workplace): ReportLine[] {
  return listReports(notebook.store).map((report) => reportLine(notebook, report));
}

/** What the report would say; it has no number yet. */
export function previewReport(workplace: Workplace, input: ParsedInput<'report.preview'>): Promise<ReportContent> {
  const replaces = input.replaces === null ? null : { reportId: input.replaces, reason: '' };
  return contentOf(workplace, { ...input, replaces }, '');
}

/** Freezes content and PDF in the notebook and gives the report its number. */
export async function issueReport(workplace: Workplace, input: ParsedInput<'report.issue'>): Promise<ReportLine> {
  const { notebook } = workplace;
  if (notebook.store.readOnly) throw new Refusal('read-only', notebook.store.readOnly);
  const content = await contentOf(workplace, input, nextReportNumber(notebook.store, workplace.now().getUTCFullYear()));
  const pdf = await workplace.surroundings.renderReport(content);
  if (workplace.open !== notebook || notebook.store.chainHash !== content.record.chainHash) {
    throw new Refusal('conflict', 'The notebook was changed while the report was being made; look at it and issue it again.');
  }
  const reportId = workplace.newId();
  const frozen = attachmentDraft(notebook.store, `${content.number}.json`, 'application/json', Buffer.from(JSON.stringify(content), 'utf8'));
  const printed = attachmentDraft(notebook.store, pdfName(content.number), 'application/pdf', pdf);
  notebook.append(
    [
      ...frozen.drafts,
      ...printed.drafts,
      {
        kind: 'report.issued',
        body: {
          reportId,
          number: content.number,
          title: input.title,
          recipient: input.recipient,
          remark: input.remark,
          testIds: input.testIds,
          contentSha256: frozen.sha256,
          pdfSha256: printed.sha256,
          replaces: input.replaces,
        },
      },
    ],
    [...frozen.attachments, ...printed.attachments],
  );
  return reportLine(notebook, requireReport(notebook, reportId));
}

/** An issued report as it was frozen. */
export function reportContent({ notebook }: Workplace, { reportId }: { reportId: string }): ReportContent {
  return frozenContent(notebook, requireReport(notebook, reportId));
}

export function reportPdf({ notebook }: Workplace, { reportId }: { reportId: string }): { fileName: string; bytes: string } {
  const report = requireReport(notebook, reportId);
  return { fileName: pdfName(report.number), bytes: Buffer.from(attachedBytes(notebook, report.pdfSha256)).toString('base64') };
}

async function contentOf(workplace: Workplace, input: ParsedInput<'report.issue'>, number: string): Promise<ReportContent> {
  const { notebook } = workplace;
  const { store } = notebook;
  if (notebook.atBench === null) throw new Refusal('conflict', 'Choose who is at the bench first; a report carries a name.');
  const testIds = [...new Set(input.testIds)];
  if (testIds.length < input.testIds.length) throw new Refusal('conflict', 'A test is in the list twice; a report holds each test once.');
  const preparedBy = nameOf(store, notebook.atBench);
  return assembleReport(
    {
      number,
      title: input.title,
      laboratory: notebookHeading(store).laboratory,
      recipient: input.recipient,
      remark: input.remark,
      preparedBy,
      preparedAt: workplace.now().toISOString(),
      replaces: replacedBy(notebook, input.replaces),
      ...genealogyOf(notebook, testIds),
      record: { entries: store.entryCount, chainHash: store.chainHash },
      signatures: [
        { role: 'Prepared by', name: preparedBy },
        { role: 'Approved by', name: '' },
      ],
    },
    await Promise.all(reportTests(notebook, testIds).map((test) => withPictures(notebook, test, input.pictures))),
  );
}

/** Of the samples for which it says more than the sections, which name the lots of each. */
function genealogyOf({ store }: OpenNotebook, testIds: string[]): Pick<ReportContent, 'genealogy'> {
  const sampleIds = [...new Set(testIds.map((testId) => loadTest(store, testId).sampleId))];
  const genealogy = sampleIds.flatMap((sampleId) => {
    const { code, addedAt } = findSample(store, sampleId)!;
    const lots = lotPlacesOfSample(store, sampleId, dayOf(addedAt));
    return lots.some(({ depth }) => depth > 0) ? [{ sample: code, lots: lots.map(({ lotId: _id, ...lot }) => lot) }] : [];
  });
  return genealogy.length > 0 ? { genealogy } : {};
}

async function withPictures(notebook: OpenNotebook, test: ReportTest, chosen: ParsedInput<'report.issue'>['pictures']): Promise<ReportTest> {
  const { testId } = test.sheet.test;
  const pictures = chosen.filter((picture) => picture.testId === testId);
  return { ...test, pictures: await Promise.all(pictures.map(({ sha256 }) => reportPicture(notebook, testId, sha256))) };
}

function replacedBy(notebook: OpenNotebook, replaces: ParsedInput<'report.issue'>['replaces']): ReportContent['replaces'] {
  if (!replaces) return null;
  const { number, replacedBy: later } = requireReport(notebook, replaces.reportId);
  if (later) {
    throw new Refusal('conflict', `${number} is replaced by ${findReport(notebook.store, later)?.number ?? 'a later report'} already; replace that one.`);
  }
  return { number, reason: replaces.reason };
}

/** @throws Refusal that names every test that cannot be reported, and why */
function reportTests(notebook: OpenNotebook, testIds: string[]): ReportTest[] {
  const refused: string[] = [];
  const tests = testIds.flatMap((testId): ReportTest[] => {
    const test = loadTest(notebook.store, testId);
    const method = notebook.methods.ofTest(test);
    const sheet = benchSheet(notebook, testId);
    const { finished } = test;
    const named = `${method.shortTitle} on ${sheet.sample.code}`;
    if (test.state === 'running' || !finished) refused.push(`${named} is still running`);
    else if (test.state === 'outdated') refused.push(`${named} was changed after it was finished`);
    else if (!sheet.live || !sameResults(sheet.live.result.results, finished.results)) refused.push(`the stored result of ${named} is not the one that its readings give`);
    else {
      return [
        {
          method,
          calculation: calculationOf(method),
          sheet,
          testedBy: nameOf(notebook.store, finished.by),
          testedAt: finished.at,
          corrections: correctionsOfTest(notebook, testId),
        },
      ];
    }
    return [];
  });
  if (refused.length > 0) throw new Refusal('conflict', `These tests must be finished first: ${refused.join('; ')}.`);
  return tests;
}

/** @throws Error when the method names a calculation that is not registered: a mistake of the program */
function calculationOf(method: Method): Calculation {
  const calculation = calculationById(method.calculation);
  if (!calculation) throw new Error(`The calculation ${method.calculation} of ${method.title} is not registered.`);
  return calculation;
}

function reportLine(notebook: OpenNotebook, report: StoredReport): ReportLine {
  const { reportId, number, title, recipient, issuedAt, issuedBy, tests, replaces, replacedBy } = report;
  return {
    reportId,
    number,
    title,
    recipient,
    issuedAt,
    issuedBy: nameOf(notebook.store, issuedBy),
    tests,
    verdict: overallOf(notebook, report),
    replaces,
    replacedBy,
    retiredLots: retiredSince(notebook).get(reportId) ?? [],
  };
}

function retiredSince({ store, worked }: OpenNotebook): Map<string, string[]> {
  return worked.get('lots retired since issue', store.entryCount, () => lotsRetiredSinceIssue(store));
}

/** Reports are frozen, so their verdict is looked up once only: their content is large. */
function overallOf(notebook: OpenNotebook, report: StoredReport): VerdictWord {
  const known = notebook.reportVerdicts.get(report.reportId) ?? frozenContent(notebook, report).overall;
  notebook.reportVerdicts.set(report.reportId, known);
  return known;
}

function frozenContent(notebook: OpenNotebook, report: StoredReport): ReportContent {
  return JSON.parse(Buffer.from(attachedBytes(notebook, report.contentSha256)).toString('utf8')) as ReportContent;
}

function attachedBytes(notebook: OpenNotebook, sha256: string): Uint8Array {
  const bytes = notebook.store.attachment(sha256);
  if (!bytes) throw new Refusal('not-found', 'The file of this report is missing from the notebook.');
  return bytes;
}

/** @throws Refusal when there is no such report */
function requireReport(notebook: OpenNotebook, reportId: string): StoredReport {
  const report = findReport(notebook.store, reportId);
  if (!report) throw new Refusal('not-found', 'This report is not in the notebook.');
  return report;
}

function pdfName(number: string): string {
  return `${number}.pdf`;
}
