/** Plans with all their versions, the samples that follow them, and the tests made for their lines. */
export const plans = `
CREATE TABLE plan (
  planId TEXT PRIMARY KEY, version TEXT NOT NULL, title TEXT NOT NULL, product TEXT NOT NULL, retired INTEGER NOT NULL,
  retiredReason TEXT NOT NULL, addedSeq INTEGER NOT NULL
);
CREATE TABLE plan_version (
  planId TEXT NOT NULL REFERENCES plan, version TEXT NOT NULL, content TEXT NOT NULL, changes TEXT NOT NULL, reason TEXT NOT NULL,
  writtenAt TEXT NOT NULL, writtenBy TEXT NOT NULL, seq INTEGER NOT NULL, PRIMARY KEY (planId, version)
);
CREATE TABLE followed_plan (
  sampleId TEXT PRIMARY KEY REFERENCES sample, planId TEXT NOT NULL REFERENCES plan, version TEXT NOT NULL, printedAt TEXT,
  laminatedAt TEXT, followedAt TEXT NOT NULL, followedBy TEXT NOT NULL, seq INTEGER NOT NULL
);
CREATE INDEX followed_plan_by_plan ON followed_plan (planId, version);
CREATE TABLE planned_test (
  testId TEXT PRIMARY KEY REFERENCES test, sampleId TEXT NOT NULL REFERENCES sample, planId TEXT NOT NULL REFERENCES plan,
  lineId TEXT NOT NULL, replicates INTEGER NOT NULL, seq INTEGER NOT NULL
);
CREATE INDEX planned_test_by_line ON planned_test (sampleId, planId, lineId);
`;
