import { isDeepStrictEqual } from 'node:util';
import type { ParsedInput } from '../../../../shared-lib/api.ts';
import { InputError } from '../../../../shared-lib/calculation/input-error.ts';
import { offScale } from '../../../../shared-lib/method/grade-scale.ts';
import type { Factor, Response } from '../../../../shared-lib/notebook/trial-entries.ts';
import type { TrialSetLine, TrialSetView } from '../../../../shared-lib/notebook/trial-views.ts';
import type { MethodBook } from '../../method-book.ts';
import { listTrialSets, loadTrialSet } from '../../queries/trials.ts';
import { requireReason } from '../../require-reason.ts';
import { trialSetView } from '../../trials/trial-set-view.ts';
import { withUnit } from '../../with-unit.ts';
import type { Workplace } from '../../workplace.ts';

export function trialSetsList({ notebook }: Workplace): TrialSetLine[] {
  return listTrialSets(notebook.store);
}

export function addTrialSet(workplace: Workplace, input: ParsedInput<'trialSet.add'>): TrialSetView {
  const { notebook } = workplace;
  if (listTrialSets(notebook.store).some(({ title }) => title === input.title)) {
    throw new InputError('title', input.title, `There is already a trial set “${input.title}”.`);
  }
  const trialSetId = workplace.newId();
  notebook.append([{ kind: 'trialSet.added', body: { trialSetId, ...input } }]);
  return trialSetView(notebook, trialSetId, []);
}

/** The table; comparisons only of the responses that are asked for. */
export function getTrialSet({ notebook }: Workplace, { trialSetId, responses }: ParsedInput<'trialSet.get'>): TrialSetView {
  return trialSetView(notebook, trialSetId, responses ?? 'all');
}

/** What counts as better must not move unseen once it was set: a change asks for a reason. */
export function setResponses({ notebook }: Workplace, { trialSetId, responses, reason }: ParsedInput<'trialSet.setResponses'>): TrialSetView {
  const { responses: before } = loadTrialSet(notebook.store, trialSetId);
  checkResponses(notebook.methods, responses);
  if (!isDeepStrictEqual(responses, before)) {
    if (!before.every((response) => responses.some((kept) => isDeepStrictEqual(kept, response)))) requireReason(reason, 'Responses were set before');
    notebook.append([{ kind: 'responses.set', body: { trialSetId, responses, reason: reason.trim() } }]);
  }
  return trialSetView(notebook, trialSetId, []);
}

export function setFactors({ notebook }: Workplace, { trialSetId, factors, reason }: ParsedInput<'trialSet.setFactors'>): TrialSetView {
  const { factors: before } = loadTrialSet(notebook.store, trialSetId);
  checkFactors(factors);
  if (!isDeepStrictEqual(factors, before)) {
    if (!before.every((factor) => factors.some((kept) => isDeepStrictEqual(kept, factor)))) requireReason(reason, 'Factors were set before');
    notebook.append([{ kind: 'factors.set', body: { trialSetId, factors, reason: reason.trim() } }]);
  }
  return trialSetView(notebook, trialSetId, []);
}

function checkResponses(methods: MethodBook, responses: Response[]): void {
  responses.forEach((response, index) => {
    const field = `responses[${index}]`;
    const method = methods.find(response.methodId);
    if (!method) throw new InputError(`${field}.methodId`, response.methodId, `There is no method '${response.methodId}'.`);
    const property = method.properties.find(({ key }) => key === response.property);
    if (!property) throw new InputError(`${field}.property`, response.property, `${method.title} has no property '${response.property}'.`);
    if (responses.findIndex((other) => other.methodId === response.methodId && other.property === response.property) !== index) {
      throw new InputError(`${field}.property`, response.property, `${property.title} stands twice among the responses.`);
    }
    const { goal, target, lowest, highest } = response;
    for (const key of ['target', 'lowest', 'highest'] as const) {
      const odd = offScale(property, response[key]);
      if (odd) throw new InputError(`${field}.${key}`, response[key], odd);
    }
    const said = (value: number) => withUnit(value, property.unit);
    if (goal === 'target' && target === null) throw new InputError(`${field}.target`, null, `${property.title} needs its target, or another goal.`);
    if (lowest !== null && highest !== null && lowest >= highest) throw new InputError(`${field}.lowest`, lowest, `The lowest value of ${property.title} (${said(lowest)}) must lie below the highest (${said(highest)}).`);
    const belowTarget = goal !== 'lower' ? lowest : null;
    const aboveTarget = goal !== 'higher' ? highest : null;
    if (target !== null && belowTarget !== null && belowTarget >= target) throw new InputError(`${field}.lowest`, lowest, `The lowest value of ${property.title} (${said(belowTarget)}) must lie below its target (${said(target)}).`);
    if (target !== null && aboveTarget !== null && aboveTarget <= target) throw new InputError(`${field}.highest`, highest, `The highest value of ${property.title} (${said(aboveTarget)}) must lie above its target (${said(target)}).`);
  });
}

function checkFactors(factors: Factor[]): void {
  factors.forEach(({ key, label }, index) => {
    if (factors.findIndex((other) => other.key === key || other.label === label) !== index) {
      throw new InputError(`factors[${index}].key`, key, `The factor ${label} stands twice.`);
    }
  });
}
