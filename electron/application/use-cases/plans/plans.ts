import type { ParsedInput } from '../../../../shared-lib/api.ts';
import { InputError } from '../../../../shared-lib/calculation/input-error.ts';
import type { Plan, PlanHeading } from '../../../../shared-lib/notebook/plan-views.ts';
import { endUseById } from '../../../../shared-lib/plan/end-uses.ts';
import type { PlanContent } from '../../../../shared-lib/plan/plan.ts';
import { planDifferences } from '../../../../shared-lib/plan/plan-differences.ts';
import { planSheet } from '../../../../shared-lib/report/plan-sheet.ts';
import { checkPlan } from '../../check-plan.ts';
import { fileStem } from '../../file-stem.ts';
import type { OpenNotebook } from '../../open-notebook.ts';
import { notebookHeading } from '../../queries/notebook-heading.ts';
import { nameOf } from '../../queries/people.ts';
import { findPlan, findPlanVersion, listPlans, versionsOfPlan, type StoredPlan, type StoredPlanVersion } from '../../queries/plans.ts';
import { Refusal } from '../../refusal.ts';
import { requireReason } from '../../require-reason.ts';
import type { Workplace } from '../../workplace.ts';

/** Plans in use first, in the order of their titles. */
export function plansList({ notebook }: Workplace): PlanHeading[] {
  return listPlans(notebook.store).map((plan) => headingOf(plan, requireVersion(notebook, plan.planId, plan.version).content));
}

export function getPlan({ notebook }: Workplace, { planId }: ParsedInput<'plan.get'>): Plan {
  return planView(notebook, planId);
}

export function addPlan(workplace: Workplace, { content }: ParsedInput<'plan.add'>): Plan {
  const { notebook } = workplace;
  checkPlan(content, notebook.methods);
  refuseTitleTaken(notebook, content, null);
  const planId = workplace.newId();
  notebook.append([{ kind: 'plan.added', body: { planId, version: '1', content } }]);
  return planView(notebook, planId);
}

/** Makes a version. Samples that follow the plan keep theirs. */
export function changePlan({ notebook }: Workplace, { planId, content, reason }: ParsedInput<'plan.change'>): Plan {
  const { retired, version } = requirePlan(notebook, planId);
  checkPlan(content, notebook.methods);
  refuseTitleTaken(notebook, content, planId);
  const changes = planDifferences(requireVersion(notebook, planId, version).content, content, (methodId) => notebook.methods.find(methodId));
  if (changes.length === 0 && !retired) throw new InputError('content', null, 'Nothing is different from the version that there is.');
  requireReason(reason, 'The plan was kept before');
  const [newest] = versionsOfPlan(notebook.store, planId);
  notebook.append([{ kind: 'plan.versioned', body: { planId, version: String(Number(newest!.version) + 1), content, changes, reason: reason.trim() } }]);
  return planView(notebook, planId);
}

/** No further sample takes it up. */
export function retirePlan({ notebook }: Workplace, { planId, reason }: ParsedInput<'plan.retire'>): Plan {
  const { title, retired } = requirePlan(notebook, planId);
  if (retired) throw new Refusal('conflict', `The plan ${title} is retired already.`);
  requireReason(reason, 'A retired plan is no longer offered');
  notebook.append([{ kind: 'plan.retired', body: { planId, reason: reason.trim() } }]);
  return planView(notebook, planId);
}

/** One version on paper. */
export async function planPdf({ notebook, surroundings }: Workplace, { planId, version }: ParsedInput<'plan.pdf'>): Promise<{ fileName: string; bytes: string }> {
  const { retired, version: newest } = requirePlan(notebook, planId);
  const stored = requireVersion(notebook, planId, version ?? newest);
  const { content, writtenAt, writtenBy } = stored;
  const sheet = planSheet(content, {
    version: stored.version,
    laboratory: notebookHeading(notebook.store).laboratory,
    writtenBy: nameOf(notebook.store, writtenBy),
    writtenAt,
    standing: retired ? 'retired' : stored.version === newest ? 'in use' : `replaced by version ${newest}`,
    record: { entries: notebook.store.entryCount, chainHash: notebook.store.chainHash },
    methodOf: (methodId) => notebook.methods.find(methodId),
  });
  return { fileName: `plan-${fileStem(content.title.toLowerCase()) || 'plan'}-v${stored.version}.pdf`, bytes: Buffer.from(await surroundings.renderPlan(sheet)).toString('base64') };
}

/** @throws Refusal when there is no such plan */
export function requirePlan({ store }: OpenNotebook, planId: string): StoredPlan {
  const plan = findPlan(store, planId);
  if (!plan) throw new Refusal('not-found', 'This plan is not in the notebook.');
  return plan;
}

/** @throws Refusal when the plan has no such version */
export function requireVersion({ store }: OpenNotebook, planId: string, version: string): StoredPlanVersion {
  const stored = findPlanVersion(store, planId, version);
  if (!stored) throw new Refusal('not-found', 'This version of the plan is not in the notebook.');
  return stored;
}

function planView(notebook: OpenNotebook, planId: string): Plan {
  const plan = requirePlan(notebook, planId);
  const versions = versionsOfPlan(notebook.store, planId);
  const { content } = versions.find(({ version }) => version === plan.version)!;
  return {
    ...headingOf(plan, content),
    retiredReason: plan.retiredReason,
    content,
    versions: versions.map(({ planId: _same, writtenBy, ...version }) => ({ ...version, writtenBy: nameOf(notebook.store, writtenBy) })),
  };
}

function headingOf({ planId, version, retired, samples }: StoredPlan, { title, product, customer, endUse, lines }: PlanContent): PlanHeading {
  return { planId, title, product, customer, endUse: endUseById(endUse)?.title ?? '', version, tests: lines.length, samples, retired };
}

/** Two plans of one title could not be told apart in lists. */
function refuseTitleTaken({ store }: OpenNotebook, { title }: PlanContent, planId: string | null): void {
  const same = listPlans(store).find((plan) => plan.planId !== planId && plan.title.toLowerCase() === title.toLowerCase());
  if (same) throw new InputError('content.title', title, `There is already a plan ‘${same.title}’; give this one a title of its own.`);
}
