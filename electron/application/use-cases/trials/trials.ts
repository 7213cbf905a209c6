import type { ParsedInput } from '../../../../shared-lib/api.ts';
import { InputError } from '../../../../shared-lib/calculation/input-error.ts';
import type { TrialSetView } from '../../../../shared-lib/notebook/trial-views.ts';
import { dayOf } from '../../day-of.ts';
import type { OpenNotebook } from '../../open-notebook.ts';
import { listMaterials } from '../../queries/materials.ts';
import { findSample } from '../../queries/samples.ts';
import { loadTrialSet, trialSetOf, type StoredTrialSet } from '../../queries/trials.ts';
import { Refusal } from '../../refusal.ts';
import { requireReason } from '../../require-reason.ts';
import { trialSetView } from '../../trials/trial-set-view.ts';
import type { Workplace } from '../../workplace.ts';

type TrialInput = Omit<ParsedInput<'trial.add'>, 'trialSetId'>;

export function addTrial(workplace: Workplace, { trialSetId, ...trial }: ParsedInput<'trial.add'>): TrialSetView {
  const { notebook } = workplace;
  checkTrial(notebook, loadTrialSet(notebook.store, trialSetId), trial, null);
  notebook.append([{ kind: 'trial.added', body: { trialId: workplace.newId(), trialSetId, ...trial } }]);
  return trialSetView(notebook, trialSetId, []);
}

export function changeTrial({ notebook }: Workplace, { trialId, reason, ...trial }: ParsedInput<'trial.change'>): TrialSetView {
  const set = trialSetOf(notebook.store, trialId);
  checkTrial(notebook, set, trial, trialId);
  requireReason(reason, 'The trial is in the record');
  notebook.append([{ kind: 'trial.changed', body: { trialId, ...trial, reason: reason.trim() } }]);
  return trialSetView(notebook, set.trialSetId, []);
}

/** A sample belongs to one trial of a set only: its readings must not count twice. */
export function linkSample({ notebook }: Workplace, { trialId, sampleId }: ParsedInput<'trial.linkSample'>): TrialSetView {
  const set = trialSetOf(notebook.store, trialId);
  const sample = findSample(notebook.store, sampleId);
  if (!sample) throw new Refusal('not-found', 'This sample is not in the notebook.');
  const holder = set.trials.find(({ samples }) => samples.some((linked) => linked.sampleId === sampleId));
  if (holder) throw new InputError('sampleId', sampleId, `Sample ${sample.code} is one of trial ${holder.name} already; its readings must not count twice.`);
  notebook.append([{ kind: 'sample.linked', body: { trialId, sampleId } }]);
  return trialSetView(notebook, set.trialSetId, []);
}

export function unlinkSample({ notebook }: Workplace, { trialId, sampleId, reason }: ParsedInput<'trial.unlinkSample'>): TrialSetView {
  const set = trialSetOf(notebook.store, trialId);
  const trial = set.trials.find((candidate) => candidate.trialId === trialId)!;
  if (!trial.samples.some((linked) => linked.sampleId === sampleId)) throw new InputError('sampleId', sampleId, `This sample is none of trial ${trial.name}.`);
  requireReason(reason, `The sample was taken as one of trial ${trial.name}`);
  notebook.append([{ kind: 'sample.unlinked', body: { trialId, sampleId, reason: reason.trim() } }]);
  return trialSetView(notebook, set.trialSetId, []);
}

function checkTrial(notebook: OpenNotebook, set: StoredTrialSet, trial: TrialInput, trialId: string | null): void {
  const others = set.trials.filter((other) => other.trialId !== trialId);
  if (others.some(({ name }) => name === trial.name)) throw new InputError('name', trial.name, `There is already a trial ${trial.name} in this set.`);
  const control = others.find((other) => other.control);
  if (trial.control && control) throw new InputError('control', true, `${control.name} is the control of this set; change that first.`);
  const unknown = Object.keys(trial.factors).find((key) => !set.factors.some((factor) => factor.key === key));
  if (unknown !== undefined) throw new InputError(`factors.${unknown}`, trial.factors[unknown], `This set has no factor '${unknown}'.`);
  const materials = new Map(listMaterials(notebook.store, dayOf(notebook.now())).map((material) => [material.materialId, material]));
  trial.components.forEach(({ name, materialId, lotId }, index) => {
    const material = materialId === null ? undefined : materials.get(materialId);
    if (materialId !== null && !material) throw new InputError(`components[${index}].materialId`, materialId, `The material of ${name} is not in the notebook.`);
    if (lotId === null) return;
    if (!material) throw new InputError(`components[${index}].materialId`, materialId, `${name} states a lot; state its material as well.`);
    if (!material.lots.some((lot) => lot.lotId === lotId)) throw new InputError(`components[${index}].lotId`, lotId, `${material.name} has no such lot.`);
  });
}
