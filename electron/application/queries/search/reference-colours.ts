import { rowsKind } from './rows-kind.ts';

export const referenceColours = rowsKind(
  'Reference colours',
  'materials',
  `SELECT referenceId AS key, '' AS id, name AS title,
     trim(CASE WHEN retiredAt IS NULL THEN '' WHEN note = '' THEN 'retired' ELSE 'retired · ' END || note) AS detail,
     name || ' ' || note || ' ' || coalesce((SELECT group_concat(customer, ' ') FROM reference_tolerance AS tolerance WHERE tolerance.referenceId = reference_colour.referenceId), '') AS words,
     addedSeq AS newest FROM reference_colour WHERE replacedBy IS NULL`,
);
