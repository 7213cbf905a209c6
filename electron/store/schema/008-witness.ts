/** Pages of work that a second person read and signed, and tests begun by mistake. */
export const witness = `
CREATE TABLE witness (
  seq INTEGER PRIMARY KEY, testId TEXT REFERENCES test, "by" TEXT REFERENCES person, fromSeq INTEGER NOT NULL, toSeq INTEGER NOT NULL,
  chainHash TEXT NOT NULL, personId TEXT NOT NULL REFERENCES person, meaning TEXT NOT NULL, at TEXT NOT NULL
);
CREATE INDEX witness_by_test ON witness (testId, toSeq);
ALTER TABLE test ADD COLUMN withdrawn TEXT NOT NULL DEFAULT '';
`;
