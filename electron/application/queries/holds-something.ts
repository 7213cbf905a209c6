import { UNDONE } from '../../../shared-lib/material/undone-reason.ts';

const holds = (table: string, column: string, id: string) => `EXISTS (SELECT 1 FROM ${table} WHERE ${column} = ${id})`;
const files = (to: string, id: string) => `EXISTS (SELECT 1 FROM attachment_link WHERE attachedTo = '${to}' AND attachedId = ${id})`;

/** Condition on `lot`, as SQL: it was not added by mistake and undone, or something stands on it nevertheless. */
export const LOT_IS_LISTED = `(lot.retiredReason <> '${UNDONE}' OR ${[
  holds('sample_lot', 'sample_lot.lotId', 'lot.lotId'),
  holds('lot_part', 'lot_part.lotId', 'lot.lotId'),
  holds('lot_part', 'lot_part.partId', 'lot.lotId'),
  holds('approval_lot', 'approval_lot.lotId', 'lot.lotId'),
  files('lot', 'lot.lotId'),
].join(' OR ')})`;

/** The same of `sample`. */
export const SAMPLE_IS_LISTED = `(sample.retiredReason <> '${UNDONE}' OR ${[
  holds('test', "test.withdrawn = '' AND test.sampleId", 'sample.sampleId'),
  holds('trial_sample', 'trial_sample.sampleId', 'sample.sampleId'),
  holds('followed_plan', 'followed_plan.sampleId', 'sample.sampleId'),
  files('sample', 'sample.sampleId'),
].join(' OR ')})`;
