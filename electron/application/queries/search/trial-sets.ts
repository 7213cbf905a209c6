import { rowsKind } from './rows-kind.ts';

export const trialSets = rowsKind(
  'Trial sets',
  'trials',
  `SELECT trialSetId AS key, trialSetId AS id, title, question AS detail, title || ' ' || question || ' ' || product AS words, addedSeq AS newest FROM trial_set`,
);
