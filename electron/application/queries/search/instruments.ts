import { rowsKind } from './rows-kind.ts';

export const instruments = rowsKind(
  'Instruments',
  'instruments',
  `SELECT instrumentId AS key, '' AS id, name AS title, trim(serial || CASE WHEN retiredAt IS NULL THEN '' ELSE ' · out of use' END) AS detail,
     name || ' ' || serial || ' ' || note AS words, addedSeq AS newest FROM instrument`,
);
