import { rowsKind } from './rows-kind.ts';

export const reports = rowsKind(
  'Reports',
  'reports',
  `SELECT reportId AS key, reportId AS id, number AS title, report.title || CASE WHEN recipient = '' THEN '' ELSE ' · ' || recipient END AS detail,
     number || ' ' || report.title || ' ' || recipient || ' ' || remark AS words, issuedSeq AS newest FROM report`,
);
