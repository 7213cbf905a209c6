import { rowsKind } from './rows-kind.ts';

export const plans = rowsKind(
  'Plans',
  'plans',
  `SELECT planId AS key, planId AS id, title, trim(product || CASE WHEN retired THEN ' · retired' ELSE '' END) AS detail,
     title || ' ' || product AS words, addedSeq AS newest FROM plan`,
);
