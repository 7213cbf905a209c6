import { rowsKind } from './rows-kind.ts';

export const fluids = rowsKind(
  'Fluids, tapes and standards',
  'instruments',
  `SELECT fluidId AS key, '' AS id, name AS title, kind || CASE WHEN lot = '' THEN '' ELSE ' · lot ' || lot END || CASE WHEN retiredAt IS NULL THEN '' ELSE ' · out of use' END AS detail,
     kind || ' ' || name || ' ' || lot || ' ' || note AS words, addedSeq AS newest FROM fluid`,
);
