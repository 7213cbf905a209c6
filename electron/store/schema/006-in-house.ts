/** In-house methods with all their versions, the habits they come from, and the version that a study was made by. */
export const inHouse = `
CREATE TABLE habit (
  methodId TEXT PRIMARY KEY, title TEXT NOT NULL, habit TEXT NOT NULL, describedAt TEXT NOT NULL, describedBy TEXT NOT NULL,
  seq INTEGER NOT NULL
);
CREATE TABLE in_house_method (
  methodId TEXT PRIMARY KEY, version TEXT NOT NULL, title TEXT NOT NULL, retired INTEGER NOT NULL, retiredReason TEXT NOT NULL,
  addedSeq INTEGER NOT NULL
);
CREATE TABLE in_house_version (
  methodId TEXT NOT NULL REFERENCES in_house_method, version TEXT NOT NULL, written TEXT NOT NULL, origin TEXT,
  changes TEXT NOT NULL, reason TEXT NOT NULL, writtenAt TEXT NOT NULL, writtenBy TEXT NOT NULL, seq INTEGER NOT NULL,
  PRIMARY KEY (methodId, version)
);
CREATE INDEX test_by_method ON test (methodId, methodVersion);
ALTER TABLE study ADD COLUMN methodVersion TEXT NOT NULL DEFAULT '';
`;
