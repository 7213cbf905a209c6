/**
 * Reference colours with the tolerance of each customer, and the files that spectra came from. Prints of one reference are looked
 * up at every reading of another: the last approved lot is among them.
 */
export const colour = `
CREATE TABLE reference_colour (
  referenceId TEXT PRIMARY KEY, name TEXT NOT NULL, spectrum TEXT, L REAL, a REAL, b REAL, illuminant TEXT NOT NULL, observer INTEGER NOT NULL,
  condition TEXT, geometry TEXT, note TEXT NOT NULL, file TEXT, replacedBy TEXT, addedAt TEXT NOT NULL, addedBy TEXT NOT NULL, addedSeq INTEGER NOT NULL
);
CREATE TABLE reference_tolerance (
  referenceId TEXT NOT NULL REFERENCES reference_colour, customer TEXT NOT NULL, formula TEXT NOT NULL, "limit" REAL NOT NULL,
  cmcL REAL NOT NULL, cmcC REAL NOT NULL, deltaL REAL, deltaC REAL, deltaH REAL, seq INTEGER NOT NULL,
  PRIMARY KEY (referenceId, customer)
) WITHOUT ROWID;
CREATE TABLE spectrum_file (
  testId TEXT NOT NULL REFERENCES test, "row" TEXT NOT NULL, key TEXT NOT NULL, file TEXT NOT NULL, seq INTEGER NOT NULL,
  PRIMARY KEY (testId, "row", key)
) WITHOUT ROWID;
CREATE INDEX condition_by_reference ON condition (value) WHERE key = 'reference';
`;
