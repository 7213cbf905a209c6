import type { ParsedInput } from '../../../shared-lib/api.ts';
import { InputError } from '../../../shared-lib/calculation/input-error.ts';
import type { SampleLine, SampleView } from '../../../shared-lib/notebook/views.ts';
import { worstVerdict } from '../../../shared-lib/report/worst-verdict.ts';
import type { OpenNotebook } from '../open-notebook.ts';
import { listLots, lotsOfSample } from '../queries/materials.ts';
import { countSamples, findSample, findSampleByCode, listSamples, type StoredSample } from '../queries/samples.ts';
import { testsOfSample } from '../queries/tests.ts';
import { Refusal } from '../refusal.ts';
import { testLine } from '../test-line.ts';
import type { Workplace } from '../workplace.ts';

export function samplesList(workplace: Workplace, input: ParsedInput<'samples.list'>): { total: number; samples: SampleLine[] } {
  const { notebook } = workplace;
  return {
    total: countSamples(notebook.store, input.search),
    samples: listSamples(notebook.store, input.search, input.limit, input.offset).map((sample) => sampleLine(notebook, sample)),
  };
}

/** @throws Refusal when there is no such sample */
export function sampleView(notebook: OpenNotebook, sampleId: string): SampleView {
  const sample = findSample(notebook.store, sampleId);
  if (!sample) throw new Refusal('not-found', 'This sample is not in the notebook.');
  const testLines = testsOfSample(notebook.store, sampleId).map(({ testId }) => testLine(notebook, testId));
  return {
    ...sample,
    tests: testLines.length,
    verdict: worstVerdict(testLines.map((line) => line.verdict)),
    lots: lotsOfSample(notebook.store, sampleId),
    testLines,
  };
}

export function addSample(workplace: Workplace, input: ParsedInput<'sample.add'>): SampleView {
  const { notebook } = workplace;
  if (findSampleByCode(notebook.store, input.code)) {
    throw new InputError('code', input.code, `There is already a sample ${input.code}; a code names one sample only.`);
  }
  const known = new Set(listLots(notebook.store).map((lot) => lot.lotId));
  const unknown = input.lotIds.findIndex((lotId) => !known.has(lotId));
  if (unknown !== -1) throw new InputError(`lotIds[${unknown}]`, input.lotIds[unknown], 'This lot is not in the notebook.');
  const sampleId = workplace.newId();
  notebook.append([{ kind: 'sample.added', body: { sampleId, ...input, lotIds: [...new Set(input.lotIds)] } }]);
  return sampleView(notebook, sampleId);
}

/** Lists are long: a finished test gives its stored verdicts without being looked at as a whole. */
function sampleLine(notebook: OpenNotebook, sample: StoredSample): SampleLine {
  const { sampleId, code, product, job, roll, addedAt } = sample;
  const words = testsOfSample(notebook.store, sampleId).map(({ testId, verdicts }) =>
    verdicts ? worstVerdict(verdicts.map((verdict) => verdict.verdict)) : testLine(notebook, testId).verdict,
  );
  return { sampleId, code, product, job, roll, addedAt, tests: words.length, verdict: worstVerdict(words) };
}
