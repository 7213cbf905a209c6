import type { MethodStudy } from '../../shared-lib/method/method-study.ts';
import type { BenchReadings, CellValue, Companion, Companions, Field, MeasuredPhoto, Method, Trace } from '../../shared-lib/method/method.ts';
import type { ReferenceColour } from '../../shared-lib/method/reference-colour.ts';
import { evaluateTest, type Evaluation } from './evaluate-test.ts';
import { doubtFlags } from './doubt-flags.ts';
import type { OpenNotebook } from './open-notebook.ts';
import { lastApprovedTest, testOfControl } from './queries/companions.ts';
import { findReference } from './queries/references.ts';
import { findSample } from './queries/samples.ts';
import { studiesInUse } from './queries/studies.ts';
import { loadTest, type StoredCell, type StoredTest } from './queries/tests.ts';
import { retiredReferenceFlags } from './retired-reference-flags.ts';
import { sheetRows } from './sheet-rows.ts';

/** The live result of a test, worked out once for its readings as they stand. */
export function evaluationOf(notebook: OpenNotebook, test: StoredTest, method: Method): Evaluation {
  const known = notebook.evaluations.get(test.testId);
  if (known) return known;
  const evaluation = evaluateStoredTest(notebook, test, method);
  notebook.evaluations.set(test.testId, evaluation);
  return evaluation;
}

/** The same, worked out anew whatever was worked out before. */
export function evaluateStoredTest(notebook: OpenNotebook, test: StoredTest, method: Method): Evaluation {
  const evaluation = evaluateTest(method, benchReadings(notebook, test, method), test.rule, studiesOf(notebook, test));
  evaluation.live?.result.flags.push(...doubtFlags(notebook.store, test, method), ...retiredReferenceFlags(notebook.store, test, method));
  if (evaluation.live && test.methodVersion !== method.version) {
    evaluation.live.result.flags.push({
      code: 'method-version',
      where: '',
      text: `The test was started with version ${test.methodVersion} of the method and is evaluated with version ${method.version}.`,
    });
  }
  return evaluation;
}

/** A finished test keeps the verdict that it had: studies recorded later do not count. */
function studiesOf({ store, methods }: OpenNotebook, test: StoredTest): MethodStudy[] {
  return studiesInUse(store, methods, test, test.state === 'finished' ? test.finishedSeq : null);
}

/** The readings as the method's evaluation takes them. A voided row stays in its place as a blank one. */
function benchReadings(notebook: OpenNotebook, test: StoredTest, method: Method): BenchReadings {
  return {
    conditions: valuesOf(test.conditions),
    rows: sheetRows(test, method).map(({ row, cells, voided }) => ({ row, values: voided ? {} : valuesOf(cells) })),
    limits: test.limits,
    traces: tracesInUse(notebook, test, method),
    photos: photosInUse(notebook, test, method),
    references: referencesNamed(notebook, test, method),
    ...(method.companions ? { companions: companionsOf(notebook, test) } : {}),
  };
}

/** What conditions name; a name that the notebook does not keep stays a name. */
function referencesNamed({ store }: OpenNotebook, test: StoredTest, method: Method): Record<string, ReferenceColour> {
  const named = method.conditions.filter((field) => field.kind === 'item' && field.of === 'reference').map(({ key }) => test.conditions[key]?.value);
  return Object.fromEntries(
    named.flatMap((value) => {
      const reference = typeof value === 'string' ? findReference(store, value) : undefined;
      return reference ? [[reference.referenceId, reference]] : [];
    }),
  );
}

function companionsOf({ store }: OpenNotebook, test: StoredTest): Companions {
  const approved = lastApprovedTest(store, test);
  const control = testOfControl(store, test);
  return { ...(approved ? { approved: companion(store, approved) } : {}), ...(control ? { control: companion(store, control) } : {}) };
}

function companion(store: OpenNotebook['store'], testId: string): Companion {
  const test = loadTest(store, testId);
  return {
    testId,
    sampleCode: findSample(store, test.sampleId)?.code ?? '',
    on: (test.finished?.at ?? test.startedAt).slice(0, 10),
    conditions: valuesOf(test.conditions),
    rows: test.rows.filter(({ voided }) => !voided).map(({ row, cells }) => ({ row, values: valuesOf(cells) })),
  };
}

function valuesOf(cells: Record<string, StoredCell>): Record<string, CellValue> {
  return Object.fromEntries(Object.entries(cells).flatMap(([key, { value }]) => (value === null ? [] : [[key, value]])));
}

/** A trace that was replaced stays in the record but is not read again. */
function tracesInUse(notebook: OpenNotebook, test: StoredTest, method: Method): Record<string, Trace> {
  const used = valuesInUse(test, method, 'trace');
  return Object.fromEntries(
    test.traces
      .filter(({ traceId }) => used.has(traceId))
      .map(({ traceId, sha256, reading, name }) => [traceId, notebook.traces.get(sha256, reading, name)]),
  );
}

function photosInUse(notebook: OpenNotebook, test: StoredTest, method: Method): Record<string, MeasuredPhoto> {
  const used = valuesInUse(test, method, 'photo');
  return Object.fromEntries(
    test.photos
      .filter(({ photoId }) => used.has(photoId))
      .map(({ photoId, planeSha256, reading, name }) => [photoId, notebook.photos.area(planeSha256, reading, name)]),
  );
}

function valuesInUse(test: StoredTest, method: Method, kind: Field['kind']): Set<CellValue | undefined> {
  const keys = method.readings.fields.filter((field) => field.kind === kind).map((field) => field.key);
  return new Set(test.rows.filter((row) => !row.voided).flatMap((row) => keys.map((key) => row.cells[key]?.value)));
}
