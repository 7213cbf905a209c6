/** Press approvals: what they are for, what fills their lines, who signed. */
export const approvals = `
CREATE TABLE approval (
  approvalId TEXT PRIMARY KEY, planId TEXT NOT NULL REFERENCES plan, version TEXT NOT NULL, product TEXT NOT NULL, job TEXT NOT NULL,
  customer TEXT NOT NULL, pressRun TEXT NOT NULL, note TEXT NOT NULL, replaces TEXT REFERENCES approval, replacesReason TEXT NOT NULL,
  draftedAt TEXT NOT NULL, draftedBy TEXT NOT NULL, draftedSeq INTEGER NOT NULL,
  contentSha256 TEXT REFERENCES attachment, pdfSha256 TEXT REFERENCES attachment,
  signedMeaning TEXT NOT NULL, signedBy TEXT, signedAt TEXT, signedSeq INTEGER,
  withdrawnReason TEXT NOT NULL, withdrawnBy TEXT, withdrawnAt TEXT, withdrawnSeq INTEGER,
  replacedBy TEXT REFERENCES approval, replacedSeq INTEGER
);
CREATE TABLE approval_lot (
  approvalId TEXT NOT NULL REFERENCES approval, lotId TEXT NOT NULL REFERENCES lot, place INTEGER NOT NULL, PRIMARY KEY (approvalId, lotId)
);
CREATE TABLE approval_line (
  approvalId TEXT NOT NULL REFERENCES approval, lineId TEXT NOT NULL, title TEXT NOT NULL DEFAULT '', addedSeq INTEGER NOT NULL DEFAULT 0,
  testId TEXT REFERENCES test, finishedId TEXT, linkedBy TEXT, linkedAt TEXT,
  inOrder INTEGER, remark TEXT NOT NULL DEFAULT '', observedBy TEXT, observedAt TEXT,
  waivedOf TEXT, waiverReason TEXT NOT NULL DEFAULT '', waivedBy TEXT, waivedAt TEXT,
  PRIMARY KEY (approvalId, lineId)
);
CREATE INDEX approval_line_by_test ON approval_line (testId) WHERE testId IS NOT NULL;
`;
