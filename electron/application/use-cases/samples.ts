import { isDeepStrictEqual } from 'node:util';
import type { ParsedInput } from '../../../shared-lib/api.ts';
import { InputError } from '../../../shared-lib/calculation/input-error.ts';
import { UNDONE } from '../../../shared-lib/material/undone-reason.ts';
import type { SampleDetails, SampleFields } from '../../../shared-lib/notebook/sample-entries.ts';
import type { SampleLine, SampleView } from '../../../shared-lib/notebook/views.ts';
import { worstVerdict } from '../../../shared-lib/report/worst-verdict.ts';
import { dayOf } from '../day-of.ts';
import { knownLots } from '../known-lots.ts';
import type { OpenNotebook } from '../open-notebook.ts';
import { doubtfulLotsOfSample, lotPlacesOfSample } from '../queries/lots.ts';
import { lotsOfSample } from '../queries/materials.ts';
import { countSamples, findSample, findSampleByCode, listSamples, type StoredSample } from '../queries/samples.ts';
import { testsOfSample } from '../queries/tests.ts';
import { Refusal } from '../refusal.ts';
import { requireChange } from '../require-change.ts';
import { requireReason } from '../require-reason.ts';
import { testLine } from '../test-line.ts';
import { typedAmount } from '../typed-amount.ts';
import type { Workplace } from '../workplace.ts';

/** Why what was undone is back. */
const ENTERED_AGAIN = 'entered again';

export function samplesList(workplace: Workplace, input: ParsedInput<'samples.list'>): { total: number; samples: SampleLine[] } {
  const { notebook } = workplace;
  return {
    total: countSamples(notebook.store, input.search),
    samples: listSamples(notebook.store, input.search, input.limit, input.offset).map((sample) => sampleLine(notebook, sample)),
  };
}

/** @throws Refusal when there is no such sample */
export function sampleView(notebook: OpenNotebook, sampleId: string): SampleView {
  const { retiredAt, ...sample } = requireSample(notebook, sampleId);
  const testLines = testsOfSample(notebook.store, sampleId).map(({ testId }) => testLine(notebook, testId));
  const made = dayOf(sample.addedAt);
  const doubts = new Map(doubtfulLotsOfSample(notebook.store, sampleId, made).map(({ lotId, doubt }) => [lotId, doubt]));
  return {
    ...sample,
    retired: retiredAt !== null,
    undone: isUndone({ retiredAt, ...sample }),
    tests: testLines.length,
    verdict: worstVerdict(testLines.map((line) => line.verdict)),
    lots: lotsOfSample(notebook.store, sampleId).map((lot) => ({ ...lot, ...(doubts.has(lot.lotId) ? { doubt: doubts.get(lot.lotId)! } : {}) })),
    madeFrom: lotPlacesOfSample(notebook.store, sampleId, made),
    testLines,
  };
}

/** One whose code was undone before is kept again, with what is said now. */
export function addSample(workplace: Workplace, input: ParsedInput<'sample.add'>): SampleView {
  const { notebook } = workplace;
  const { code, product, job, roll, note } = input;
  const details = detailsOf(input);
  const same = findSampleByCode(notebook.store, code);
  if (same && isUndone(same)) {
    const { sampleId } = same;
    const before = fieldsOf(same, lotsOfSample(notebook.store, sampleId).map(({ lotId }) => lotId));
    const after: SampleFields = { code, product, job, roll, note, lotIds: knownLots(notebook.store, input.lotIds), ...details };
    notebook.append([
      { kind: 'sample.returned', body: { sampleId, reason: ENTERED_AGAIN } },
      ...(isDeepStrictEqual(before, after) ? [] : [{ kind: 'sample.changed' as const, body: { sampleId, before, after, reason: ENTERED_AGAIN } }]),
    ]);
    return sampleView(notebook, sampleId);
  }
  requireOwnCode(notebook, code, '');
  const isSaid = Object.values(details).some((value) => value !== null && value !== '');
  const sampleId = workplace.newId();
  notebook.append([{ kind: 'sample.added', body: { sampleId, code, product, job, roll, note, lotIds: knownLots(notebook.store, input.lotIds), ...(isSaid ? { details } : {}) } }]);
  return sampleView(notebook, sampleId);
}

/** Says a sample anew. */
export function changeSample(workplace: Workplace, { sampleId, reason, ...input }: ParsedInput<'sample.change'>): SampleView {
  const { notebook } = workplace;
  const sample = requireSample(notebook, sampleId);
  requireOwnCode(notebook, input.code, sampleId);
  const before = fieldsOf(sample, lotsOfSample(notebook.store, sampleId).map(({ lotId }) => lotId));
  const { code, product, job, roll, note } = input;
  const after: SampleFields = { code, product, job, roll, note, lotIds: knownLots(notebook.store, input.lotIds), ...detailsOf(input) };
  notebook.append([{ kind: 'sample.changed', body: { sampleId, before, after, reason: requireChange(before, after, reason) } }]);
  return sampleView(notebook, sampleId);
}

/** A sample that was disposed of; its tests stay. */
export function retireSample({ notebook }: Workplace, { sampleId, reason }: ParsedInput<'sample.retire'>): SampleView {
  if (requireSample(notebook, sampleId).retiredAt !== null) throw new Refusal('conflict', 'This sample was disposed of already.');
  requireReason(reason, 'A sample is disposed of for a reason');
  notebook.append([{ kind: 'sample.retired', body: { sampleId, reason: reason.trim() } }]);
  return sampleView(notebook, sampleId);
}

export function returnSample({ notebook }: Workplace, { sampleId, reason }: ParsedInput<'sample.return'>): SampleView {
  if (requireSample(notebook, sampleId).retiredAt === null) throw new Refusal('conflict', 'This sample is kept.');
  requireReason(reason, 'It was put down as disposed of');
  notebook.append([{ kind: 'sample.returned', body: { sampleId, reason: reason.trim() } }]);
  return sampleView(notebook, sampleId);
}

function requireSample({ store }: OpenNotebook, sampleId: string): StoredSample {
  const sample = findSample(store, sampleId);
  if (!sample) throw new Refusal('not-found', 'This sample is not in the notebook.');
  return sample;
}

function requireOwnCode({ store }: OpenNotebook, code: string, sampleId: string): void {
  const same = findSampleByCode(store, code);
  if (same && same.sampleId !== sampleId) throw new InputError('code', code, `There is already a sample ${code}; a code names one sample only.${isUndone(same) ? ' It was undone: add it again to use it.' : ''}`);
}

/** Added by mistake and taken back, not disposed of. */
function isUndone({ retiredAt, retiredReason }: Pick<StoredSample, 'retiredAt' | 'retiredReason'>): boolean {
  return retiredAt !== null && retiredReason === UNDONE;
}

function detailsOf({ customer, across, along, keptAt, retainedUntil }: Pick<ParsedInput<'sample.add'>, 'customer' | 'across' | 'along' | 'keptAt' | 'retainedUntil'>): SampleDetails {
  return {
    customer,
    acrossMm: typedAmount(across, 'across', 'The place across the web', 'mm', { low: 0, high: 20_000 }),
    alongM: typedAmount(along, 'along', 'The place along the roll', 'm', { low: 0, high: 1_000_000 }),
    keptAt,
    retainedUntil,
  };
}

function fieldsOf({ code, product, job, roll, note, customer, acrossMm, alongM, keptAt, retainedUntil }: StoredSample, lotIds: string[]): SampleFields {
  return { code, product, job, roll, note, lotIds, customer, acrossMm, alongM, keptAt, retainedUntil };
}

/** Lists are long: a finished test gives its stored verdicts without being looked at as a whole. */
function sampleLine(notebook: OpenNotebook, sample: StoredSample): SampleLine {
  const { sampleId, code, product, job, roll, addedAt, retiredAt, retiredReason } = sample;
  const words = testsOfSample(notebook.store, sampleId).map(({ testId, verdicts }) =>
    verdicts ? worstVerdict(verdicts.map((verdict) => verdict.verdict)) : testLine(notebook, testId).verdict,
  );
  return { sampleId, code, product, job, roll, addedAt, tests: words.length, verdict: worstVerdict(words), retired: retiredAt !== null, undone: isUndone({ retiredAt, retiredReason }) };
}
