/**
 * Which samples a press approval stands for, and every test that ever filled a line of it: for the entries that are there
 * already the same as `shared-lib/notebook/approval-changes.ts` says.
 */
export const pressRuns = `
ALTER TABLE approval ADD COLUMN samplesSaid INTEGER NOT NULL DEFAULT 0;
CREATE TABLE approval_sample (
  approvalId TEXT NOT NULL REFERENCES approval, sampleId TEXT NOT NULL REFERENCES sample, place INTEGER NOT NULL, PRIMARY KEY (approvalId, sampleId)
) WITHOUT ROWID;
CREATE INDEX approval_sample_by_sample ON approval_sample (sampleId);
CREATE TABLE approval_link (
  approvalId TEXT NOT NULL REFERENCES approval, lineId TEXT NOT NULL, testId TEXT NOT NULL REFERENCES test, seq INTEGER NOT NULL,
  PRIMARY KEY (approvalId, lineId, testId)
) WITHOUT ROWID;
INSERT OR REPLACE INTO approval_link (approvalId, lineId, testId, seq)
SELECT linked.body ->> 'approvalId', linked.body ->> 'lineId', linked.body ->> '$.result.testId', linked.seq FROM entry AS linked
WHERE linked.kind = 'approvalLine.linked' AND NOT EXISTS (
  SELECT 1 FROM entry AS dropped WHERE dropped.kind = 'approvalLine.dropped' AND dropped.seq > linked.seq
    AND dropped.body ->> 'approvalId' = linked.body ->> 'approvalId' AND dropped.body ->> 'lineId' = linked.body ->> 'lineId')
ORDER BY linked.seq;
`;
