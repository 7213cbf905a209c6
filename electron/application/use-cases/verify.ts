import { verifyChain } from '../../../shared-lib/notebook/hash-chain.ts';
import type { VerifyView } from '../../../shared-lib/notebook/views.ts';
import { sha256Hex } from '../../store/journal.ts';
import { evaluateStoredTest } from '../evaluation-of-test.ts';
import { firstLine } from '../first-line.ts';
import type { OpenNotebook } from '../open-notebook.ts';
import { findSample } from '../queries/samples.ts';
import { listStudies, type StoredStudy } from '../queries/studies.ts';
import { loadTest, testIdsInState } from '../queries/tests.ts';
import { differingResults } from '../same-results.ts';
import { evaluateStudy } from '../trials/evaluate-study.ts';
import type { Workplace } from '../workplace.ts';

const ALL = 1_000_000;

/** Works everything out again: the chain of the record, the tables, the attachments and every result of a finished test or a study. */
export function verifyRecord({ notebook }: Workplace): VerifyView {
  const { store } = notebook;
  const problems = [
    ...verifyChain(store.entries()).map((problem) => problem.text),
    ...store.tableDifferences(),
    ...attachmentProblems(notebook),
    ...witnessProblems(notebook),
    ...testIdsInState(store, 'finished', ALL).flatMap((testId) => resultProblems(notebook, testId)),
    ...listStudies(store, '').flatMap((study) => studyProblems(notebook, study)),
  ];
  return { entries: store.entryCount, chainHash: store.chainHash, intact: problems.length === 0, problems, remarks: clockRemarks(notebook) };
}

function studyProblems({ methods }: OpenNotebook, { methodId, property: key, kind, readings, results, calculationVersion, recordedAt }: StoredStudy): string[] {
  const property = methods.property(methodId, key);
  const named = `the measurement study of ${property?.title ?? key} of ${recordedAt.slice(0, 10)}`;
  if (!property) return [`The result of ${named} cannot be checked: this version of Laydown does not know the method.`];
  try {
    const worked = evaluateStudy(kind, property.unit, readings);
    const differing = differingResults(worked.results, results);
    if (differing.length === 0) return [];
    const by = worked.version === calculationVersion ? '' : ` (stored by version ${calculationVersion} of the calculation, worked out anew by version ${worked.version})`;
    return [`The stored result of ${named} is not the one that its readings give: ${differing.join(', ')} differ${differing.length === 1 ? 's' : ''}${by}.`];
  } catch (error) {
    return [`The result of ${named} cannot be worked out: ${firstLine(error)}`];
  }
}

/** An entry keeps its place whatever the clock says. */
function clockRemarks({ store }: OpenNotebook): string[] {
  const back = store.all<{ seq: number; recordedAt: string; before: string }>(
    `SELECT entry.seq, entry.recordedAt, earlier.recordedAt AS before FROM entry JOIN entry AS earlier ON earlier.seq = entry.seq - 1 AND earlier.hash = entry.previous
     WHERE entry.recordedAt < earlier.recordedAt ORDER BY entry.seq`,
  );
  return back.map(({ seq, recordedAt, before }) => `The computer’s clock went back before entry ${seq}: it was recorded at ${recordedAt}, the one before at ${before}. The order of the entries holds.`);
}

function witnessProblems({ store }: OpenNotebook): string[] {
  return store
    .all<{ seq: number; toSeq: number }>('SELECT witness.seq, witness.toSeq FROM witness LEFT JOIN entry ON entry.seq = witness.toSeq WHERE entry.hash IS NOT witness.chainHash ORDER BY witness.seq')
    .map(({ seq, toSeq }) => `Entry ${seq} witnesses the work up to entry ${toSeq}, but that entry is not the one that was signed.`);
}

function attachmentProblems({ store }: OpenNotebook): string[] {
  return store.all<{ sha256: string; name: string }>('SELECT sha256, name FROM attachment ORDER BY addedSeq').flatMap(({ sha256, name }) => {
    const bytes = store.attachment(sha256);
    if (!bytes) return [`The file ${name} is missing from the notebook.`];
    return sha256Hex(bytes) === sha256 ? [] : [`The file ${name} was changed after it was put into the notebook.`];
  });
}

function resultProblems(notebook: OpenNotebook, testId: string): string[] {
  const test = loadTest(notebook.store, testId);
  const method = notebook.methods.findOfTest(test);
  const named = `${method?.shortTitle ?? test.methodId} on ${findSample(notebook.store, test.sampleId)?.code ?? 'a sample that is missing'}`;
  if (!method) return [`The result of ${named} cannot be checked: this version of Laydown does not know the method.`];
  try {
    const { live, missing } = evaluateStoredTest(notebook, test, method);
    if (!live) return [`The stored result of ${named} does not follow from its readings: ${missing?.text ?? 'they give none.'}`];
    const { version } = live.result;
    const differing = differingResults(live.result.results, test.finished?.results ?? {});
    if (differing.length === 0) return [];
    const by = version === test.finished?.calculationVersion ? '' : ` (stored by version ${test.finished?.calculationVersion} of the calculation, worked out anew by version ${version})`;
    return [`The stored result of ${named} is not the one that its readings give: ${differing.join(', ')} differ${differing.length === 1 ? 's' : ''}${by}.`];
  } catch (error) {
    return [`The result of ${named} cannot be worked out: ${firstLine(error)}`];
  }
}
