import { InputError } from '../../../shared-lib/calculation/input-error.ts';
import type { Property } from '../../../shared-lib/method/method.ts';
import type { Response } from '../../../shared-lib/notebook/trial-entries.ts';
import { responseKey } from '../../../shared-lib/trial/response-head.ts';
import type { ColumnTrial } from '../../../shared-lib/trial/column-trial.ts';
import type { OpenNotebook } from '../open-notebook.ts';
import type { StoredTrialSet } from '../queries/trials.ts';
import { columnTrials } from './trial-set-view.ts';

/**
 * A response of a set with every trial's readings.
 * @param field the input that named it, for the refusal
 * @throws InputError when the set has no such response or its method is not known here
 */
export function responseOfSet(notebook: OpenNotebook, set: StoredTrialSet, key: string, field: string): { response: Response; property: Property; trials: ColumnTrial[] } {
  const response = set.responses.find((candidate) => responseKey(candidate) === key);
  if (!response) throw new InputError(field, key, 'This set has no such response.');
  const property = notebook.methods.property(response.methodId, response.property);
  if (!property) throw new InputError(field, key, `This version of Laydown has no method '${response.methodId}'.`);
  return { response, property, trials: columnTrials(notebook, set, response.methodId, property) };
}
