import type { CellValue } from '../method/method.ts';

/** What the ids of an entry are called. Each gives a name that can stand in a sentence, also for an id it does not know. */
export interface EntryNames {
  /** 'Imke Rasmund' */
  person(personId: string): string;
  /** 'PET film 12 µm' */
  material(materialId: string): string;
  /** 'PET film 12 µm, lot 4711' */
  lot(lotId: string): string;
  /** 'the instrument Spectrodensitometer, SD-2207' */
  instrument(instrumentId: string): string;
  /** 'Test fluids, lot TF-9' */
  fluid(fluidId: string): string;
  /** 'S-014' */
  sample(sampleId: string): string;
  /** 'Test fluids' */
  method(methodId: string): string;
  /** 'Test fluids on S-014' */
  test(testId: string): string;
  /** 'position 3' */
  row(testId: string, row: string): string;
  /** The label of a condition or reading: 'wetting tension' */
  field(testId: string, key: string): string;
  /** A value as it is read, with its unit: '38 mN/m'; the label of a choice; the file of a trace or photograph. Never called with `null`. */
  value(testId: string, key: string, value: CellValue): string;
  /** The name of an attachment: 'film certificate.pdf' */
  file(sha256: string): string;
  /** 'LD-2025-003' */
  report(reportId: string): string;
  /** 'the trial set “Low-migration series”' */
  trialSet(trialSetId: string): string;
  /** 'the reference colour “Pouch red 12”' */
  reference(referenceId: string): string;
  /** '“Frozen dumpling pouch”' */
  plan(planId: string): string;
  /** 'the press approval of job J-4418, dumpling pouch 600 g' */
  approval(approvalId: string): string;
  /** Of an approval: what the line asks for. */
  approvalLine(approvalId: string, lineId: string): string;
  /** 'trial R4' */
  trial(trialId: string): string;
  /** 'Mean bond strength by Lamination bond' */
  property(methodId: string, property: string): string;
}
