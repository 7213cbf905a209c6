/**
 * The record (append only) and the tables made from it. Column names are the field names of the entries.
 * `condition.value` and `reading.value` have no type: a number stays a number, text stays text.
 */
export const first = `
CREATE TABLE entry (
  seq INTEGER PRIMARY KEY,
  id TEXT NOT NULL UNIQUE,
  kind TEXT NOT NULL,
  body TEXT NOT NULL,
  "by" TEXT NOT NULL,
  occurredAt TEXT NOT NULL,
  recordedAt TEXT NOT NULL,
  previous TEXT NOT NULL,
  hash TEXT NOT NULL UNIQUE
);
CREATE INDEX entry_by_kind ON entry (kind, seq);
CREATE INDEX entry_by_person ON entry ("by", seq);

CREATE TRIGGER entry_in_order BEFORE INSERT ON entry
WHEN NEW.seq <> (SELECT coalesce(max(seq), 0) + 1 FROM entry)
BEGIN SELECT RAISE(ABORT, 'An entry can only be added at the end of the record.'); END;
CREATE TRIGGER entry_unchanged BEFORE UPDATE ON entry
BEGIN SELECT RAISE(ABORT, 'An entry is never changed.'); END;
CREATE TRIGGER entry_kept BEFORE DELETE ON entry
BEGIN SELECT RAISE(ABORT, 'An entry is never removed.'); END;

CREATE TABLE attachment_content (sha256 TEXT PRIMARY KEY, bytes BLOB NOT NULL);
CREATE TRIGGER attachment_content_unchanged BEFORE UPDATE ON attachment_content
BEGIN SELECT RAISE(ABORT, 'An attachment is never changed.'); END;
CREATE TRIGGER attachment_content_kept BEFORE DELETE ON attachment_content
BEGIN SELECT RAISE(ABORT, 'An attachment is never removed.'); END;

CREATE TABLE notebook (one INTEGER PRIMARY KEY CHECK (one = 1), title TEXT NOT NULL, laboratory TEXT NOT NULL, createdAt TEXT NOT NULL);

CREATE TABLE person (personId TEXT PRIMARY KEY, name TEXT NOT NULL, initials TEXT NOT NULL, role TEXT NOT NULL, addedSeq INTEGER NOT NULL);

CREATE TABLE material (
  materialId TEXT PRIMARY KEY, kind TEXT NOT NULL, name TEXT NOT NULL, supplier TEXT NOT NULL, description TEXT NOT NULL,
  addedSeq INTEGER NOT NULL
);
CREATE TABLE lot (
  lotId TEXT PRIMARY KEY, materialId TEXT NOT NULL REFERENCES material, code TEXT NOT NULL, receivedOn TEXT, note TEXT NOT NULL,
  addedSeq INTEGER NOT NULL
);
CREATE INDEX lot_by_material ON lot (materialId);

CREATE TABLE sample (
  sampleId TEXT PRIMARY KEY, code TEXT NOT NULL, product TEXT NOT NULL, job TEXT NOT NULL, roll TEXT NOT NULL, note TEXT NOT NULL,
  addedAt TEXT NOT NULL, addedBy TEXT NOT NULL, addedSeq INTEGER NOT NULL
);
CREATE INDEX sample_by_code ON sample (code);
CREATE INDEX sample_by_age ON sample (addedSeq);
CREATE TABLE sample_lot (
  sampleId TEXT NOT NULL REFERENCES sample, lotId TEXT NOT NULL REFERENCES lot, place INTEGER NOT NULL,
  PRIMARY KEY (sampleId, lotId)
) WITHOUT ROWID;
CREATE INDEX sample_lot_by_lot ON sample_lot (lotId);

CREATE TABLE attachment (
  sha256 TEXT PRIMARY KEY REFERENCES attachment_content, name TEXT NOT NULL, mediaType TEXT NOT NULL, size INTEGER NOT NULL,
  addedSeq INTEGER NOT NULL
);

CREATE TABLE test (
  testId TEXT PRIMARY KEY, sampleId TEXT NOT NULL REFERENCES sample, methodId TEXT NOT NULL, methodVersion TEXT NOT NULL,
  rule TEXT NOT NULL, state TEXT NOT NULL CHECK (state IN ('running', 'finished', 'outdated')),
  startedAt TEXT NOT NULL, startedBy TEXT NOT NULL, startedSeq INTEGER NOT NULL,
  finishedAt TEXT, finishedBy TEXT, finishedSeq INTEGER,
  calculation TEXT, calculationVersion TEXT, results TEXT, verdicts TEXT, remark TEXT NOT NULL
);
CREATE INDEX test_by_sample ON test (sampleId, startedSeq);
CREATE INDEX test_by_state ON test (state, startedSeq);
CREATE INDEX test_by_finish ON test (finishedSeq);
CREATE TABLE test_limit (
  testId TEXT NOT NULL REFERENCES test, property TEXT NOT NULL, lower REAL, upper REAL, source TEXT NOT NULL, place INTEGER NOT NULL,
  PRIMARY KEY (testId, property)
) WITHOUT ROWID;
CREATE TABLE condition (
  testId TEXT NOT NULL REFERENCES test, key TEXT NOT NULL, value, typed TEXT NOT NULL, corrections INTEGER NOT NULL, seq INTEGER NOT NULL,
  PRIMARY KEY (testId, key)
) WITHOUT ROWID;
CREATE TABLE bench_row (
  testId TEXT NOT NULL REFERENCES test, "row" TEXT NOT NULL, voided INTEGER NOT NULL DEFAULT 0, voidReason TEXT NOT NULL DEFAULT '',
  remark TEXT NOT NULL DEFAULT '',
  PRIMARY KEY (testId, "row")
) WITHOUT ROWID;
CREATE TABLE reading (
  testId TEXT NOT NULL, "row" TEXT NOT NULL, key TEXT NOT NULL, value, typed TEXT NOT NULL, corrections INTEGER NOT NULL,
  seq INTEGER NOT NULL,
  PRIMARY KEY (testId, "row", key), FOREIGN KEY (testId, "row") REFERENCES bench_row
) WITHOUT ROWID;
CREATE TABLE trace (
  traceId TEXT PRIMARY KEY, testId TEXT NOT NULL REFERENCES test, "row" TEXT NOT NULL, key TEXT NOT NULL,
  sha256 TEXT NOT NULL REFERENCES attachment, reading TEXT NOT NULL, points INTEGER NOT NULL, seq INTEGER NOT NULL
);
CREATE INDEX trace_by_test ON trace (testId);

CREATE TABLE report (
  reportId TEXT PRIMARY KEY, number TEXT NOT NULL, title TEXT NOT NULL, recipient TEXT NOT NULL, remark TEXT NOT NULL,
  contentSha256 TEXT NOT NULL REFERENCES attachment, pdfSha256 TEXT NOT NULL REFERENCES attachment,
  issuedAt TEXT NOT NULL, issuedBy TEXT NOT NULL, issuedSeq INTEGER NOT NULL,
  replaces TEXT REFERENCES report, replacesReason TEXT NOT NULL, replacedBy TEXT REFERENCES report
);
CREATE UNIQUE INDEX report_by_number ON report (number);
CREATE INDEX report_by_age ON report (issuedSeq);
CREATE TABLE report_test (
  reportId TEXT NOT NULL REFERENCES report, testId TEXT NOT NULL REFERENCES test, place INTEGER NOT NULL,
  PRIMARY KEY (reportId, testId)
) WITHOUT ROWID;
CREATE INDEX report_test_by_test ON report_test (testId);

CREATE TABLE entry_about (
  seq INTEGER PRIMARY KEY, testId TEXT REFERENCES test, sampleId TEXT REFERENCES sample, words TEXT NOT NULL
);
CREATE INDEX entry_about_by_test ON entry_about (testId, seq);
CREATE INDEX entry_about_by_sample ON entry_about (sampleId, seq);
`;
