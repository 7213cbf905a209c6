import type { Tables } from '../../../shared-lib/notebook/tables.ts';
import type { PlanContent, PlanLine } from '../../../shared-lib/plan/plan.ts';
import type { NotebookStore } from '../../store/notebook-store.ts';
import { completeRowsOf } from './complete-rows.ts';
import { ofSamples } from './of-samples.ts';

export interface StoredPlan {
  planId: string;
  /** That samples take from now on. */
  version: string;
  title: string;
  product: string;
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

/** Versions of plans that samples follow. @param sampleIds `null`: all samples */
export function versionsFollowed(store: NotebookStore, sampleIds: readonly string[] | null): StoredPlanVersion[] {
  const { and, parameters } = ofSamples('sampleId', sampleIds);
  return store
    .all<Pick<StoredFollowedPlan, 'planId' | 'version'>>(`SELECT DISTINCT planId, version FROM followed_plan WHERE true ${and}`, parameters)
    .map(({ planId, version }) => findPlanVersion(store, planId, version)!);
}

const OF_SAMPLE = "planned_test.sampleId = followed_plan.sampleId AND planned_test.planId = ?1 AND test.withdrawn = ''";

/**
 * Samples that follow this version of a plan, are kept, know a time that its moments count from and have a line without
 * test or with too few rows, with their codes. Thousands may have followed it to its end.
 * @param sampleIds `null`: all samples
 */
export function samplesOnTheWay(store: NotebookStore, { planId, version, content }: StoredPlanVersion, sampleIds: readonly string[] | null): (StoredFollowedPlan & { sampleCode: string })[] {
  const { and, parameters } = ofSamples('followed_plan.sampleId', sampleIds);
  return store.all(
    `SELECT followed_plan.*, sample.code AS sampleCode FROM followed_plan JOIN sample USING (sampleId)
     WHERE planId = ?1 AND version = ?2 AND sample.retiredAt IS NULL AND (printedAt IS NOT NULL OR laminatedAt IS NOT NULL)
       AND (?3 > (SELECT count(DISTINCT lineId) FROM planned_test JOIN test USING (testId) WHERE ${OF_SAMPLE} AND lineId IN (SELECT value ->> 'lineId' FROM json_each(?4)))
         OR EXISTS (SELECT 1 FROM planned_test JOIN test USING (testId) JOIN json_each(?4) AS line ON line.value ->> 'lineId' = lineId
           WHERE ${OF_SAMPLE} AND state = 'finished' AND ${completeRowsOf('planned_test.testId')} < line.value ->> 'replicates')) ${and}`,
    [planId, version, content.lines.length, JSON.stringify(content.lines.map(({ lineId, replicates }) => ({ lineId, replicates }))), ...parameters],
  );
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

/** The line of a plan that a test was made for, in the version that its sample follows; where that has no such line, in the newest that has. */
export function plannedLine(store: NotebookStore, testId: string): { planId: string; plan: string; line: PlanLine | undefined; replicates: number } | undefined {
  const planned = store.one<Tables['planned_test']>('SELECT * FROM planned_test WHERE testId = ?', [testId]);
  if (!planned) return undefined;
  const { planId, lineId, sampleId, replicates } = planned;
  const followed = followedPlanOf(store, sampleId);
  const versions = versionsOfPlan(store, planId);
  const own = versions.filter(({ version }) => followed?.planId === planId && followed.version === version);
  const known = [...own, ...versions].find(({ content }) => content.lines.some((line) => line.lineId === lineId)) ?? versions[0];
  return known && { planId, plan: known.content.title, line: known.content.lines.find((line) => line.lineId === lineId), replicates };
}

/** Tests of a sample that stand for no line of this plan, newest first: one of a plan that it followed before may stand for a line of this one. */
export function testsWithoutLine(store: NotebookStore, sampleId: string, planId: string): Pick<Tables['test'], 'testId' | 'methodId' | 'startedAt' | 'state'>[] {
  return store.all(
    `SELECT testId, methodId, startedAt, state FROM test WHERE sampleId = ?1 AND withdrawn = '' AND testId NOT IN (SELECT testId FROM planned_test WHERE sampleId = ?1 AND planId = ?2) ORDER BY startedSeq DESC`,
    [sampleId, planId],
  );
}

function planOf({ planId, version, title, product, retired, retiredReason, samples }: Tables['plan'] & { samples: number }): StoredPlan {
  return { planId, version, title, product, retired: retired === 1, retiredReason, samples };
}

function versionOf({ content, changes, seq: _order, ...version }: Tables['plan_version'] & { samples: number }): StoredPlanVersion {
  return { ...version, content: JSON.parse(content) as PlanContent, changes: JSON.parse(changes) as string[] };
}
