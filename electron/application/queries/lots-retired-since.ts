import type { NotebookStore } from '../../store/notebook-store.ts';
import { groupBy } from './group-by.ts';

/** Retired lots (`root`) with all that was made from them, to begin a query with; ends also where there is a loop. */
const BELOW = `WITH RECURSIVE below(lotId, root) AS (
    SELECT lotId, lotId FROM lot WHERE retiredAt IS NOT NULL UNION SELECT lot_part.lotId, root FROM lot_part JOIN below ON lot_part.partId = below.lotId),
  sampled(sampleId, root) AS (SELECT DISTINCT sampleId, root FROM sample_lot JOIN below USING (lotId))`;

const NAMED = `SELECT DISTINCT id, material.name || ', lot ' || lot.code AS name, lot.retiredAt, lot.retiredReason
  FROM hit JOIN lot ON lot.lotId = hit.root JOIN material USING (materialId) WHERE lot.retiredAt > hit.since ORDER BY lot.retiredAt`;

interface RetiredSince {
  id: string;
  name: string;
  retiredAt: string;
  retiredReason: string;
}

/** Of signed press approvals that neither were withdrawn nor replaced: lots that were retired since, on which they stand through themselves, their samples or their results. One sentence each, by `approvalId`. */
export function lotsRetiredSinceSigning(store: NotebookStore): Map<string, string[]> {
  return sentences(
    store.all<RetiredSince>(
      `${BELOW}, standing AS (SELECT approvalId, job, samplesSaid, signedAt FROM approval WHERE signedSeq IS NOT NULL AND withdrawnSeq IS NULL AND replacedSeq IS NULL),
       hit(id, root, since) AS (
         SELECT approvalId, root, signedAt FROM below JOIN approval_lot USING (lotId) JOIN standing USING (approvalId)
         UNION SELECT approvalId, root, signedAt FROM sampled JOIN approval_sample USING (sampleId) JOIN standing USING (approvalId)
         UNION SELECT approvalId, root, signedAt FROM sampled JOIN sample USING (sampleId) JOIN standing ON samplesSaid = 0 AND lower(standing.job) = lower(sample.job)
         UNION SELECT approvalId, root, signedAt FROM sampled JOIN test USING (sampleId) JOIN approval_line USING (testId) JOIN standing USING (approvalId))
       ${NAMED}`,
    ),
    'after it was signed',
  );
}

/** Of issued reports: lots that were retired since, of which their samples are made. One sentence each, by `reportId`. */
export function lotsRetiredSinceIssue(store: NotebookStore): Map<string, string[]> {
  return sentences(
    store.all<RetiredSince>(
      `${BELOW}, hit(id, root, since) AS (
         SELECT DISTINCT reportId, root, issuedAt FROM sampled JOIN test USING (sampleId) JOIN report_test USING (testId) JOIN report USING (reportId))
       ${NAMED}`,
    ),
    'after it was issued',
  );
}

function sentences(found: RetiredSince[], since: string): Map<string, string[]> {
  const said = ({ name, retiredAt, retiredReason }: RetiredSince) => `${name} was retired on ${retiredAt.slice(0, 10)} (${retiredReason.replace(/[.!?…]+$/, '')}), ${since}.`;
  return new Map([...groupBy(found, ({ id }) => id)].map(([id, lots]) => [id, lots.map(said)]));
}
