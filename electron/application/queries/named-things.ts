import { FLUID_NAME, INSTRUMENT_NAME } from './equipment.ts';

/** SQL for all that has a name, as `id` and `name`: what the sentences of the Record call it (`entry-names.ts`), a sample with its product. */
export const NAMED_THINGS = `
  SELECT sampleId AS id, code || ' ' || product AS name FROM sample
  UNION ALL SELECT materialId, name FROM material
  UNION ALL SELECT lotId, material.name || ', lot ' || lot.code FROM lot JOIN material USING (materialId)
  UNION ALL SELECT instrumentId, ${INSTRUMENT_NAME} FROM instrument
  UNION ALL SELECT fluidId, ${FLUID_NAME} FROM fluid
  UNION ALL SELECT referenceId, name FROM reference_colour
  UNION ALL SELECT trialSetId, title FROM trial_set
  UNION ALL SELECT trialId, name FROM trial
  UNION ALL SELECT planId, title FROM plan
  UNION ALL SELECT approvalId, job || ' ' || product FROM approval
  UNION ALL SELECT lineId, title FROM approval_line
  UNION ALL SELECT reportId, number FROM report
  UNION ALL SELECT personId, name FROM person
  UNION ALL SELECT sha256, name FROM attachment`;
