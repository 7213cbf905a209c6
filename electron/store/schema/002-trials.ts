/** Formulation trials and measurement studies. Lists that are only read as a whole are kept as JSON. */
export const trials = `
CREATE TABLE trial_set (
  trialSetId TEXT PRIMARY KEY, title TEXT NOT NULL, question TEXT NOT NULL, product TEXT NOT NULL,
  responses TEXT NOT NULL, factors TEXT NOT NULL, addedAt TEXT NOT NULL, addedBy TEXT NOT NULL, addedSeq INTEGER NOT NULL
);
CREATE TABLE trial (
  trialId TEXT PRIMARY KEY, trialSetId TEXT NOT NULL REFERENCES trial_set, name TEXT NOT NULL, control INTEGER NOT NULL,
  components TEXT NOT NULL, factors TEXT NOT NULL, note TEXT NOT NULL, addedSeq INTEGER NOT NULL
);
CREATE INDEX trial_by_set ON trial (trialSetId, addedSeq);
CREATE TABLE trial_sample (
  trialId TEXT NOT NULL REFERENCES trial, sampleId TEXT NOT NULL REFERENCES sample, seq INTEGER NOT NULL,
  PRIMARY KEY (trialId, sampleId)
) WITHOUT ROWID;
CREATE INDEX trial_sample_by_sample ON trial_sample (sampleId);

CREATE TABLE study (
  studyId TEXT PRIMARY KEY, methodId TEXT NOT NULL, property TEXT NOT NULL, kind TEXT NOT NULL, readings TEXT NOT NULL,
  calculationVersion TEXT NOT NULL, results TEXT NOT NULL, remark TEXT NOT NULL,
  recordedAt TEXT NOT NULL, recordedBy TEXT NOT NULL, seq INTEGER NOT NULL
);
CREATE INDEX study_by_method ON study (methodId, property, seq);
`;
