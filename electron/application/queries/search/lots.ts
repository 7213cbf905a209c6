import { UNDONE } from '../../../../shared-lib/material/undone-reason.ts';
import { rowsKind } from './rows-kind.ts';

export const lots = rowsKind(
  'Lots',
  'lot',
  `SELECT lotId AS key, lotId AS id, lot.code AS title, material.name || CASE WHEN lot.retiredAt IS NULL THEN '' WHEN lot.retiredReason = '${UNDONE}' THEN ' · undone' ELSE ' · retired' END AS detail,
     lot.code || ' ' || material.name || ' ' || material.supplier || ' ' || lot.note AS words, lot.addedSeq AS newest
   FROM lot JOIN material USING (materialId)`,
);
