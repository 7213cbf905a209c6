import { rowsKind } from './rows-kind.ts';

export const approvals = rowsKind(
  'Approvals',
  'approvals',
  `SELECT approvalId AS key, approvalId AS id, trim(product || CASE WHEN job = '' THEN '' ELSE ' · ' || job END, ' ·') AS title,
     CASE WHEN withdrawnAt IS NOT NULL THEN 'withdrawn' WHEN signedAt IS NOT NULL THEN 'signed ' || substr(signedAt, 1, 10) ELSE 'not signed' END
       || CASE WHEN pressRun = '' THEN '' ELSE ' · ' || pressRun END AS detail,
     product || ' ' || job || ' ' || customer || ' ' || pressRun || ' ' || approval.note || ' ' || plan.title AS words, draftedSeq AS newest
   FROM approval JOIN (SELECT planId, title FROM plan) AS plan USING (planId)`,
);
