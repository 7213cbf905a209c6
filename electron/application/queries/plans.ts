import type { Tables } from '../../../shared-lib/notebook/tables.ts';
import type { PlanContent } from '../../../shared-lib/plan/plan.ts';
import type { NotebookStore } from '../../store/notebook-store.ts';

export interface StoredPlan {
  planId: string;
  /** That samples take from now on. */
  version: string;
  title: string;
  retired: boolean;
  retiredReason: string;
  /** That follow any version of it. */
  samples: number;
}

export interface StoredPlanVersion {
  planId: string;
  version: string;
  content: PlanContent;
  changes: string[];
  reason: string;
  writtenAt: string;
  writtenBy: string;
  /** That follow this version. */
  samples: number;
}

export type StoredFollowedPlan = Tables['followed_plan'];

const PLAN = 'SELECT plan.*, (SELECT count(*) FROM followed_plan WHERE followed_plan.planId = plan.planId) AS samples FROM plan';
const VERSION = `SELECT plan_version.*, (SELECT count(*) FROM followed_plan WHERE followed_plan.planId = plan_version.planId AND followed_plan.version = plan_version.version) AS samples
  FROM plan_version`;

/** Those in use first, in the order of their titles. */
export function listPlans(store: NotebookStore): StoredPlan[] {
  return store.all<Tables['plan'] & { samples: number }>(`${PLAN} ORDER BY retired, title, addedSeq`).map(planOf);
}

export function findPlan(store: NotebookStore, planId: string): StoredPlan | undefined {
  const row = store.one<Tables['plan'] & { samples: number }>(`${PLAN} WHERE planId = ?`, [planId]);
  return row && planOf(row);
}

export function findPlanVersion(store: NotebookStore, planId: string, version: string): StoredPlanVersion | undefined {
  const row = store.one<Tables['plan_version'] & { samples: number }>(`${VERSION} WHERE planId = ? AND version = ?`, [planId, version]);
  return row && versionOf(row);
}

/** Newest first. */
export function versionsOfPlan(store: NotebookStore, planId: string): StoredPlanVersion[] {
  return store.all<Tables['plan_version'] & { samples: number }>(`${VERSION} WHERE planId = ? ORDER BY seq DESC`, [planId]).map(versionOf);
}

/** The plan that a sample follows, if any. */
export function followedPlanOf(store: NotebookStore, sampleId: string): StoredFollowedPlan | undefined {
  return store.one<StoredFollowedPlan>('SELECT * FROM followed_plan WHERE sampleId = ?', [sampleId]) ?? undefined;
}

/** Samples that follow a plan and know a time that its moments count from, with their codes, in the order in which they took it up. */
export function samplesWithPlan(store: NotebookStore): (StoredFollowedPlan & { sampleCode: string })[] {
  return store.all(
    'SELECT followed_plan.*, sample.code AS sampleCode FROM followed_plan JOIN sample USING (sampleId) WHERE printedAt IS NOT NULL OR laminatedAt IS NOT NULL ORDER BY seq',
  );
}

/** Every line that has a test, as sample, plan and line; what was withdrawn does not count. */
export function linesWithTest(store: NotebookStore): { sampleId: string; planId: string; lineId: string }[] {
  return store.all("SELECT planned_test.sampleId, planId, lineId FROM planned_test JOIN test USING (testId) WHERE test.withdrawn = ''");
}

/** The test that each line of a plan was last given on a sample, by `lineId`; one that was withdrawn does not count. */
export function testsOfLines(store: NotebookStore, sampleId: string, planId: string): Map<string, string> {
  const rows = store.all<{ lineId: string; testId: string }>("SELECT lineId, testId FROM planned_test JOIN test USING (testId) WHERE planned_test.sampleId = ? AND planId = ? AND test.withdrawn = '' ORDER BY seq", [sampleId, planId]);
  return new Map(rows.map(({ lineId, testId }) => [lineId, testId]));
}

/** The rows that the plan asks for, of a test that was made for one of its lines. */
export function plannedRows(store: NotebookStore, testId: string): number | undefined {
  return store.one<{ replicates: number }>('SELECT replicates FROM planned_test WHERE testId = ?', [testId])?.replicates;
}

/** Tests of a sample that stand for no line of a plan, newest first. */
export function testsWithoutLine(store: NotebookStore, sampleId: string): Pick<Tables['test'], 'testId' | 'methodId' | 'startedAt' | 'state'>[] {
  return store.all(
    `SELECT testId, methodId, startedAt, state FROM test WHERE sampleId = ?1 AND withdrawn = '' AND testId NOT IN (SELECT testId FROM planned_test WHERE sampleId = ?1) ORDER BY startedSeq DESC`,
    [sampleId],
  );
}

function planOf({ planId, version, title, retired, retiredReason, samples }: Tables['plan'] & { samples: number }): StoredPlan {
  return { planId, version, title, retired: retired === 1, retiredReason, samples };
}

function versionOf({ content, changes, seq: _order, ...version }: Tables['plan_version'] & { samples: number }): StoredPlanVersion {
  return { ...version, content: JSON.parse(content) as PlanContent, changes: JSON.parse(changes) as string[] };
}
