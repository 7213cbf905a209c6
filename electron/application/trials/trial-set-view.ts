import { InputError } from '../../../shared-lib/calculation/input-error.ts';
import type { Property } from '../../../shared-lib/method/method.ts';
import type { Response } from '../../../shared-lib/notebook/trial-entries.ts';
import type { ResponseView, TrialRow, TrialSetView } from '../../../shared-lib/notebook/trial-views.ts';
import { formulationView } from '../../../shared-lib/trial/formulation-view.ts';
import { trialDesirability } from '../../../shared-lib/trial/desirability.ts';
import type { ColumnTrial } from '../../../shared-lib/trial/column-trial.ts';
import { responseColumn, type ResponseColumn } from '../../../shared-lib/trial/response-column.ts';
import { goalText, responseKey } from '../../../shared-lib/trial/response-head.ts';
import type { OpenNotebook } from '../open-notebook.ts';
import { nameOf } from '../queries/people.ts';
import { studiesInUse } from '../queries/studies.ts';
import { loadTrialSet, type StoredTrialSet } from '../queries/trials.ts';
import { responseReadings } from './response-readings.ts';
import { versionsApart } from './versions-apart.ts';

/**
 * A trial set as a table.
 * @param asked keys of the responses to compare the trials in
 * @throws Refusal when there is no such set; InputError for a key that is none of its responses
 */
export function trialSetView(notebook: OpenNotebook, trialSetId: string, asked: readonly string[] | 'all'): TrialSetView {
  const set = loadTrialSet(notebook.store, trialSetId);
  const keys = set.responses.map(responseKey);
  const unknown = asked === 'all' ? -1 : asked.findIndex((key) => !keys.includes(key));
  if (unknown !== -1) throw new InputError(`responses[${unknown}]`, asked[unknown], 'This set has no such response.');
  const columns = new Map(
    set.responses.flatMap((response) => (asked === 'all' || asked.includes(responseKey(response)) ? [[responseKey(response), columnOf(notebook, set, response)]] : [])),
  );
  const complete = columns.size === keys.length && keys.length > 0;
  const { desirability, notes } = complete
    ? trialDesirability(set.responses.map((response) => ({ response, title: titleOf(notebook, response), cells: columns.get(responseKey(response))!.cells })), set.trials)
    : { desirability: null, notes: [] };
  const control = set.trials.find((trial) => trial.control) ?? null;
  return {
    trialSetId,
    title: set.title,
    question: set.question,
    product: set.product,
    addedAt: set.addedAt,
    addedBy: nameOf(notebook.store, set.addedBy),
    factors: set.factors,
    responses: set.responses.map((response) => head(notebook, response, columns.get(responseKey(response)) ?? null)),
    trials: set.trials.map(({ trialId, name, control: isControl, note, components, factors, samples }): TrialRow => {
      const cells = Object.fromEntries(
        [...columns].map(([key, column]) => {
          const alone = desirability?.get(trialId)?.single[key] ?? null;
          return [key, { ...column.cells[trialId]!, desirability: alone }];
        }),
      );
      return {
        trialId,
        name,
        control: isControl,
        note,
        components,
        factors,
        formulation: formulationView(components, isControl ? null : (control?.components ?? null)),
        samples,
        cells,
        desirability: desirability?.get(trialId)?.overall ?? null,
      };
    }),
    notes: [...(set.trials.length > 0 && !control ? ['No trial is the control: the trials are compared with one another, and none with today’s ink.'] : []), ...notes, ...[...columns].flatMap(([key, { cells }]) => apartIn(notebook, set.responses.find((response) => responseKey(response) === key)!, cells))],
  };
}

/** Readings by versions of one method that read differently stand in one column; that must be seen. */
function apartIn(notebook: OpenNotebook, response: Response, cells: ResponseColumn['cells']): string[] {
  const property = notebook.methods.property(response.methodId, response.property) ?? unknownProperty(response);
  const apart = versionsApart(notebook, response.methodId, property, Object.values(cells).flatMap(({ tests }) => tests));
  return apart ? [apart] : [];
}

function titleOf({ methods }: OpenNotebook, { methodId, property }: Response): string {
  return methods.property(methodId, property)?.title ?? property;
}

/** The set's trials with their readings of one response. */
export function columnTrials(notebook: OpenNotebook, set: StoredTrialSet, methodId: string, property: Property): ColumnTrial[] {
  const found = responseReadings(notebook, set.trialSetId, methodId, property);
  return set.trials.map(({ trialId, name, control }) => ({ trialId, name, control, ...(found.get(trialId) ?? { readings: [], tests: [] }) }));
}

/** One column, kept until the next entry. */
export function columnOf(notebook: OpenNotebook, set: StoredTrialSet, response: Response): ResponseColumn {
  const key = `column ${set.trialSetId} ${responseKey(response)}`;
  return notebook.worked.get(key, notebook.store.entryCount, () => {
    const property = notebook.methods.property(response.methodId, response.property) ?? unknownProperty(response);
    return responseColumn(response, property, columnTrials(notebook, set, response.methodId, property));
  });
}

/** A notebook from a newer version of the program may name a method that is not known here: its column stays empty. */
function unknownProperty({ property }: Response): Property {
  return { key: property, title: property, unit: '', better: 'none', limited: false, headline: false };
}

function head(notebook: OpenNotebook, response: Response, column: ResponseColumn | null): ResponseView {
  const property = notebook.methods.property(response.methodId, response.property) ?? unknownProperty(response);
  const method = notebook.methods.find(response.methodId);
  const study = studiesInUse(notebook.store, notebook.methods, { methodId: response.methodId, methodVersion: method?.version ?? '' }, null).find((candidate) => candidate.property === response.property);
  return {
    ...response,
    key: responseKey(response),
    methodTitle: method?.shortTitle ?? response.methodId,
    title: property.title,
    unit: property.unit,
    kind: property.kind ?? 'number',
    goalText: goalText(response, property),
    studyText: study?.text ?? '',
    comparison: column?.comparison ?? null,
  };
}
