import { rowsKind } from './rows-kind.ts';

export const lots = rowsKind(
  'Lots',
  'lot',
  `SELECT lotId AS key, lotId AS id, lot.code AS title, material.name AS detail,
     lot.code || ' ' || material.name || ' ' || material.supplier || ' ' || lot.note AS words, lot.addedSeq AS newest
   FROM lot JOIN material USING (materialId)`,
);
