import { rowsKind } from './rows-kind.ts';

export const materials = rowsKind(
  'Materials',
  'material',
  `SELECT materialId AS key, materialId AS id, name AS title, kind || CASE WHEN supplier = '' THEN '' ELSE ' · ' || supplier END AS detail,
     kind || ' ' || name || ' ' || supplier || ' ' || description AS words, addedSeq AS newest FROM material`,
);
