import { rowsKind } from './rows-kind.ts';

export const samples = rowsKind(
  'Samples',
  'samples',
  `SELECT sampleId AS key, sampleId AS id, code AS title, trim(product || CASE WHEN job = '' THEN '' ELSE ' · ' || job END) AS detail,
     code || ' ' || product || ' ' || job || ' ' || roll || ' ' || customer || ' ' || keptAt || ' ' || note AS words, addedSeq AS newest FROM sample`,
);
