/** People who left, passphrases for signing, and how often a wrong one was typed since the last right one. */
export const people = `
ALTER TABLE person ADD COLUMN retired INTEGER NOT NULL DEFAULT 0;
ALTER TABLE person ADD COLUMN retiredReason TEXT NOT NULL DEFAULT '';
CREATE TABLE passphrase (
  personId TEXT PRIMARY KEY REFERENCES person, N INTEGER NOT NULL, r INTEGER NOT NULL, p INTEGER NOT NULL,
  salt TEXT NOT NULL, hash TEXT NOT NULL, setAt TEXT NOT NULL
);
CREATE TABLE signing_refused (personId TEXT PRIMARY KEY REFERENCES person, times INTEGER NOT NULL, lastAt TEXT NOT NULL);
`;
