import type { TrialReading } from '../../../shared-lib/trial/trial-reading.ts';
import type { Property } from '../../../shared-lib/method/method.ts';
import type { ResultValue } from '../../../shared-lib/calculation/result.ts';
import { singleValues } from '../../../shared-lib/report/property-line.ts';
import type { TrialCell } from '../../../shared-lib/notebook/trial-views.ts';
import { evaluationOf } from '../evaluation-of-test.ts';
import type { OpenNotebook } from '../open-notebook.ts';
import { groupBy } from '../queries/group-by.ts';
import { loadTest } from '../queries/tests.ts';
import { finishedTestsOfSet } from '../queries/trials.ts';

/** The readings of one trial for one response, and the tests that they come from. */
export interface TrialReadings {
  readings: TrialReading[];
  tests: TrialCell['tests'];
}

/** By `trialId`: readings of the finished, current tests of each trial's samples. A trial without any is absent. */
export function responseReadings(notebook: OpenNotebook, trialSetId: string, methodId: string, property: Property): Map<string, TrialReadings> {
  const key = `readings ${trialSetId} ${methodId} ${property.key}`;
  return notebook.worked.get(key, notebook.store.entryCount, () => {
    const tests = groupBy(finishedTestsOfSet(notebook.store, trialSetId, methodId), ({ trialId }) => trialId);
    return new Map(
      [...tests].map(([trialId, found]) => {
        const read = found.map(({ testId, sampleCode, finishedOn }) => ({ testId, sampleCode, finishedOn, readings: readingsOfTest(notebook, testId, property) }));
        return [
          trialId,
          {
            readings: read.flatMap(({ readings }) => readings),
            tests: read.map(({ testId, sampleCode, finishedOn, readings }) => ({ testId, sampleCode, n: readings.length, finishedOn })),
          },
        ];
      }),
    );
  });
}

/** The single values of a property in a test; where its method keeps none, the test's one result. */
export function readingsOfTest(notebook: OpenNotebook, testId: string, property: Property): TrialReading[] {
  const test = loadTest(notebook.store, testId);
  const method = notebook.methods.findOfTest(test);
  if (!method) return [];
  const result = evaluationOf(notebook, test, method).live?.result;
  const found = result?.results[property.key];
  if (!result || !found) return [];
  return property.readingsFigure === undefined ? oneReading(found) : singleValues(result.figures.find(({ id }) => id === property.readingsFigure));
}

function oneReading({ value, low, high, bound }: ResultValue): TrialReading[] {
  if (bound === 'between' && low !== null && high !== null) return [{ value: (low + high) / 2, low, high }];
  if (value === null) return [];
  if (bound === 'at-least') return [{ value, open: 'up' }];
  return [bound === 'at-most' ? { value, open: 'down' } : { value }];
}
