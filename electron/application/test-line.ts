import type { TestLine, PropertyLine } from '../../shared-lib/notebook/views.ts';
import { headlineLines, propertyLines } from '../../shared-lib/report/property-line.ts';
import { worstVerdict } from '../../shared-lib/report/worst-verdict.ts';
import { evaluationOf } from './evaluation-of-test.ts';
import type { OpenNotebook } from './open-notebook.ts';
import { nameOf } from './queries/people.ts';
import { findSample } from './queries/samples.ts';
import { loadTest, type StoredTest } from './queries/tests.ts';

/** @throws Refusal when there is no such test */
export function testLine(notebook: OpenNotebook, testId: string): TestLine {
  return testLineOf(notebook, loadTest(notebook.store, testId));
}

/** The line of a test in lists. A finished test shows the result that was stored, any other the one that follows now. */
export function testLineOf(notebook: OpenNotebook, test: StoredTest): TestLine {
  const method = notebook.methods.findOfTest(test);
  const sample = findSample(notebook.store, test.sampleId);
  const lines = linesOf(notebook, test);
  return {
    testId: test.testId,
    sampleId: test.sampleId,
    sampleCode: sample?.code ?? '',
    product: sample?.product ?? '',
    methodId: test.methodId,
    methodVersion: test.methodVersion,
    methodTitle: method?.shortTitle ?? test.methodId,
    startedAt: test.startedAt,
    startedBy: nameOf(notebook.store, test.startedBy),
    state: test.state,
    readings: test.rows.filter((row) => !row.voided && Object.values(row.cells).some(({ value }) => value !== null)).length,
    headline: method ? headlineLines(method, lines) : [],
    verdict: worstVerdict(lines.map((line) => line.verdict.verdict)),
  };
}

function linesOf(notebook: OpenNotebook, test: StoredTest): PropertyLine[] {
  const method = notebook.methods.findOfTest(test);
  if (!method) return [];
  if (test.state === 'finished' && test.finished) return propertyLines(method, test.finished.results, test.finished.verdicts, []);
  return evaluationOf(notebook, test, method).live?.lines ?? [];
}
