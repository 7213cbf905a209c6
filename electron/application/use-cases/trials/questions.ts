import type { ParsedInput } from '../../../../shared-lib/api.ts';
import { InputError } from '../../../../shared-lib/calculation/input-error.ts';
import type { EquivalenceView, FactorView, PlanView, TradeOffView } from '../../../../shared-lib/notebook/trial-views.ts';
import { equivalenceView } from '../../../../shared-lib/trial/equivalence-view.ts';
import { factorView } from '../../../../shared-lib/trial/factor-view.ts';
import { planReplicates } from '../../../../shared-lib/trial/plan-replicates.ts';
import { tradeOff } from '../../../../shared-lib/trial/trade-off.ts';
import { loadTrialSet } from '../../queries/trials.ts';
import { responseOfSet } from '../../trials/response-of-set.ts';
import { columnOf } from '../../trials/trial-set-view.ts';
import type { Workplace } from '../../workplace.ts';

/** How many readings per trial the spread of this response asks for. */
export function planTrials({ notebook }: Workplace, { trialSetId, response, ...wanted }: ParsedInput<'trialSet.plan'>): PlanView {
  const { property, trials } = responseOfSet(notebook, loadTrialSet(notebook.store, trialSetId), response, 'response');
  return planReplicates(property, trials, wanted);
}

/** Whether one trial may stand in for another. */
export function trialEquivalence({ notebook }: Workplace, input: ParsedInput<'trialSet.equivalence'>): EquivalenceView {
  const { property, trials } = responseOfSet(notebook, loadTrialSet(notebook.store, input.trialSetId), input.response, 'response');
  const trial = (id: string, field: string) => {
    const found = trials.find(({ trialId }) => trialId === id);
    if (!found) throw new InputError(field, id, 'This trial is not in the set.');
    return found;
  };
  if (input.trialId === input.fromTrialId) throw new InputError('fromTrialId', input.fromTrialId, 'Choose two different trials.');
  return equivalenceView(property, trial(input.trialId, 'trialId'), trial(input.fromTrialId, 'fromTrialId'), { lowerBound: input.lowerBound, upperBound: input.upperBound }, input.level);
}

/** A response against the factors of the set. */
export function trialFactorView({ notebook }: Workplace, { trialSetId, response, factors, level }: ParsedInput<'trialSet.factorView'>): FactorView {
  const set = loadTrialSet(notebook.store, trialSetId);
  const { property, trials } = responseOfSet(notebook, set, response, 'response');
  const chosen = factors.map((key, index) => {
    const factor = set.factors.find((candidate) => candidate.key === key);
    if (!factor) throw new InputError(`factors[${index}]`, key, 'This set has no such factor.');
    return factor;
  });
  if (factors.length === 2 && factors[0] === factors[1]) throw new InputError('factors[1]', factors[1], 'Choose two different factors.');
  return factorView(property, chosen, trials.map((trial, index) => ({ ...trial, factors: set.trials[index]!.factors })), level);
}

/** Two responses of a set against each other. */
export function trialTradeOff({ notebook }: Workplace, { trialSetId, x, y }: ParsedInput<'trialSet.tradeOff'>): TradeOffView {
  const set = loadTrialSet(notebook.store, trialSetId);
  if (x === y) throw new InputError('y', y, 'Choose two different responses.');
  const axis = (key: string, field: string) => {
    const { response, property } = responseOfSet(notebook, set, key, field);
    return { response, property, cells: columnOf(notebook, set, response).cells };
  };
  return tradeOff(axis(x, 'x'), axis(y, 'y'), set.trials);
}
