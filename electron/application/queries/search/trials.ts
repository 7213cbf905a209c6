import { rowsKind } from './rows-kind.ts';

export const trials = rowsKind(
  'Trials',
  'trials',
  `SELECT trialId AS key, trialSetId AS id, name AS title, trial_set.title AS detail,
     name || ' ' || note || ' ' || trial_set.title || ' ' || trial.components AS words, trial.addedSeq AS newest
   FROM trial JOIN trial_set USING (trialSetId)`,
);
