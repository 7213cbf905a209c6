import { rowsKind } from './rows-kind.ts';

export const people = rowsKind(
  'People',
  'notebook',
  `SELECT personId AS key, '' AS id, name AS title, initials || CASE WHEN role = '' THEN '' ELSE ' · ' || role END AS detail,
     name || ' ' || initials || ' ' || role AS words, addedSeq AS newest FROM person`,
);
