/**
 * Notebooks of other benches that were brought in. Their entries stand in `entry` with the places that they have here;
 * `sealedSeq` is the one that they were sealed with. Two benches may have given one number to two reports.
 */
export const merges = `
ALTER TABLE entry ADD COLUMN sealedSeq INTEGER;
DROP INDEX report_by_number;
CREATE INDEX report_by_number ON report (number);
CREATE TABLE merge (
  mergeId TEXT PRIMARY KEY, bench TEXT NOT NULL, title TEXT NOT NULL, laboratory TEXT NOT NULL, count INTEGER NOT NULL,
  mergedAt TEXT NOT NULL, mergedBy TEXT NOT NULL, seq INTEGER NOT NULL
);
CREATE TABLE merge_run (firstSeq INTEGER PRIMARY KEY, lastSeq INTEGER NOT NULL, forkSeq INTEGER NOT NULL, bench TEXT NOT NULL);
CREATE TABLE merge_conflict (
  mergeId TEXT NOT NULL REFERENCES merge, here TEXT NOT NULL, there TEXT NOT NULL, taken TEXT NOT NULL, mark TEXT,
  settledReason TEXT, settledAt TEXT, settledBy TEXT,
  PRIMARY KEY (mergeId, here, there)
) WITHOUT ROWID;
`;
