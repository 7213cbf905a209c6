/** Structure of materials, what is known of a lot and what it was made from, where samples are kept, instruments and test fluids. */
export const materials = `
ALTER TABLE material ADD COLUMN layers TEXT NOT NULL DEFAULT '[]';
ALTER TABLE lot ADD COLUMN expiresOn TEXT;
ALTER TABLE lot ADD COLUMN treatedOn TEXT;
ALTER TABLE lot ADD COLUMN treatedSide TEXT;
ALTER TABLE lot ADD COLUMN thicknessUm REAL;
ALTER TABLE lot ADD COLUMN retiredAt TEXT;
ALTER TABLE lot ADD COLUMN retiredReason TEXT NOT NULL DEFAULT '';
CREATE TABLE lot_part (
  lotId TEXT NOT NULL REFERENCES lot, partId TEXT NOT NULL REFERENCES lot, place INTEGER NOT NULL, PRIMARY KEY (lotId, partId)
) WITHOUT ROWID;
CREATE INDEX lot_part_by_part ON lot_part (partId);
ALTER TABLE sample ADD COLUMN customer TEXT NOT NULL DEFAULT '';
ALTER TABLE sample ADD COLUMN acrossMm REAL;
ALTER TABLE sample ADD COLUMN alongM REAL;
ALTER TABLE sample ADD COLUMN keptAt TEXT NOT NULL DEFAULT '';
ALTER TABLE sample ADD COLUMN retainedUntil TEXT;
ALTER TABLE sample ADD COLUMN retiredAt TEXT;
ALTER TABLE sample ADD COLUMN retiredReason TEXT NOT NULL DEFAULT '';
CREATE INDEX sample_by_retention ON sample (retainedUntil) WHERE retainedUntil IS NOT NULL;
CREATE TABLE instrument (
  instrumentId TEXT PRIMARY KEY, name TEXT NOT NULL, serial TEXT NOT NULL, methodIds TEXT NOT NULL, note TEXT NOT NULL,
  retiredAt TEXT, retiredReason TEXT NOT NULL, addedSeq INTEGER NOT NULL
);
CREATE TABLE calibration (
  calibrationId TEXT PRIMARY KEY, instrumentId TEXT NOT NULL REFERENCES instrument, calibratedOn TEXT NOT NULL, dueOn TEXT,
  remark TEXT NOT NULL, enteredBy TEXT NOT NULL, seq INTEGER NOT NULL
);
CREATE INDEX calibration_by_instrument ON calibration (instrumentId);
CREATE TABLE fluid (
  fluidId TEXT PRIMARY KEY, kind TEXT NOT NULL, name TEXT NOT NULL, lot TEXT NOT NULL, methodIds TEXT NOT NULL, openedOn TEXT,
  expiresOn TEXT, note TEXT NOT NULL, retiredAt TEXT, retiredReason TEXT NOT NULL, addedSeq INTEGER NOT NULL
);
`;
