import type { Tables } from '../../../shared-lib/notebook/tables.ts';
import type { Component, Factor, Response } from '../../../shared-lib/notebook/trial-entries.ts';
import type { TrialSetLine } from '../../../shared-lib/notebook/trial-views.ts';
import type { NotebookStore } from '../../store/notebook-store.ts';
import { groupBy } from './group-by.ts';
import { Refusal } from '../refusal.ts';

export interface StoredTrial {
  trialId: string;
  trialSetId: string;
  name: string;
  control: boolean;
  components: Component[];
  factors: Record<string, number>;
  note: string;
  /** In the order in which they were taken. */
  samples: { sampleId: string; code: string }[];
}

export interface StoredTrialSet {
  trialSetId: string;
  title: string;
  question: string;
  product: string;
  addedAt: string;
  addedBy: string;
  responses: Response[];
  factors: Factor[];
  /** In the order in which they were added. */
  trials: StoredTrial[];
}

/** Newest first. */
export function listTrialSets(store: NotebookStore): TrialSetLine[] {
  return store
    .all<Omit<TrialSetLine, 'responses'> & { responses: string }>(
      `SELECT trialSetId, title, question, product, addedAt, responses,
         (SELECT count(*) FROM trial WHERE trial.trialSetId = trial_set.trialSetId) AS trials,
         coalesce((SELECT name FROM trial WHERE trial.trialSetId = trial_set.trialSetId AND control = 1), '') AS control,
         (SELECT count(*) FROM trial_sample JOIN trial USING (trialId) WHERE trial.trialSetId = trial_set.trialSetId) AS samples
       FROM trial_set ORDER BY addedSeq DESC`,
    )
    .map((set) => ({ ...set, responses: (JSON.parse(set.responses) as Response[]).length }));
}

/** @throws Refusal when there is no such set */
export function loadTrialSet(store: NotebookStore, trialSetId: string): StoredTrialSet {
  const set = store.one<Tables['trial_set']>('SELECT * FROM trial_set WHERE trialSetId = ?', [trialSetId]);
  if (!set) throw new Refusal('not-found', 'This trial set is not in the notebook.');
  const { title, question, product, addedAt, addedBy } = set;
  return {
    trialSetId,
    title,
    question,
    product,
    addedAt,
    addedBy,
    responses: JSON.parse(set.responses) as Response[],
    factors: JSON.parse(set.factors) as Factor[],
    trials: trialsOf(store, trialSetId),
  };
}

/** The set that a trial belongs to. @throws Refusal when there is no such trial */
export function trialSetOf(store: NotebookStore, trialId: string): StoredTrialSet {
  const trial = store.one<{ trialSetId: string }>('SELECT trialSetId FROM trial WHERE trialId = ?', [trialId]);
  if (!trial) throw new Refusal('not-found', 'This trial is not in the notebook.');
  return loadTrialSet(store, trial.trialSetId);
}

function trialsOf(store: NotebookStore, trialSetId: string): StoredTrial[] {
  const samples = groupBy(
    store.all<{ trialId: string; sampleId: string; code: string }>(
      `SELECT trialId, sampleId, sample.code FROM trial_sample JOIN trial USING (trialId) JOIN sample USING (sampleId)
       WHERE trial.trialSetId = ? ORDER BY trial_sample.seq`,
      [trialSetId],
    ),
    ({ trialId }) => trialId,
  );
  return store.all<Tables['trial']>('SELECT * FROM trial WHERE trialSetId = ? ORDER BY addedSeq', [trialSetId]).map(({ trialId, name, control, components, factors, note }) => ({
    trialId,
    trialSetId,
    name,
    control: control === 1,
    components: JSON.parse(components) as Component[],
    factors: JSON.parse(factors) as Record<string, number>,
    note,
    samples: (samples.get(trialId) ?? []).map(({ sampleId, code }) => ({ sampleId, code })),
  }));
}

/** Finished, current tests by a method on the samples of a set, in the order in which they were finished. */
export function finishedTestsOfSet(store: NotebookStore, trialSetId: string, methodId: string): { trialId: string; testId: string; sampleCode: string; finishedOn: string }[] {
  return store.all(
    `SELECT trial.trialId, test.testId, sample.code AS sampleCode, substr(test.finishedAt, 1, 10) AS finishedOn
     FROM trial JOIN trial_sample USING (trialId) JOIN sample USING (sampleId) JOIN test USING (sampleId)
     WHERE trial.trialSetId = ? AND test.methodId = ? AND test.state = 'finished' ORDER BY test.finishedSeq`,
    [trialSetId, methodId],
  );
}
