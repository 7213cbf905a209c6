/** Which files belong to what, and photographs that were measured. */
export const attachments = `
CREATE TABLE attachment_link (
  attachedTo TEXT NOT NULL, attachedId TEXT NOT NULL, sha256 TEXT NOT NULL REFERENCES attachment, caption TEXT NOT NULL,
  linkedAt TEXT NOT NULL, linkedBy TEXT NOT NULL, seq INTEGER NOT NULL,
  PRIMARY KEY (attachedTo, attachedId, sha256)
) WITHOUT ROWID;
CREATE INDEX attachment_link_by_file ON attachment_link (sha256);
CREATE TABLE photo (
  photoId TEXT PRIMARY KEY, testId TEXT NOT NULL REFERENCES test, "row" TEXT NOT NULL, key TEXT NOT NULL,
  sha256 TEXT NOT NULL REFERENCES attachment, planeSha256 TEXT NOT NULL REFERENCES attachment, reading TEXT NOT NULL, seq INTEGER NOT NULL
);
CREATE INDEX photo_by_test ON photo (testId);
`;
