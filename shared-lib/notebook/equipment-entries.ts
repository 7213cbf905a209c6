import { z } from 'zod';

const id = z.string().min(1).max(64);
const shortText = z.string().max(200);
const longText = z.string().max(20_000);
const reason = longText.min(1);
const day = z.iso.date();

/** Methods that it serves; none: any. */
const methodIds = z.array(z.string().min(1).max(100)).max(100);

export const instrumentFieldsSchema = z.strictObject({ name: shortText.min(1), serial: shortText, methodIds, note: longText });

export const calibrationSchema = z.strictObject({
  calibratedOn: day,
  /** The last day on which it counts; `null`: no day was set. */
  dueOn: day.nullable(),
  /** By whom, against what. */
  remark: longText,
});

export const fluidFieldsSchema = z.strictObject({
  kind: z.enum(['test fluids', 'tape', 'standard', 'other']),
  name: shortText.min(1),
  lot: shortText,
  methodIds,
  openedOn: day.nullable(),
  /** The last day on which it is to be used. */
  expiresOn: day.nullable(),
  note: longText,
});

/** Entries about instruments, and about test fluids, tapes and standards. A change gives its reason where it takes the place of something said. */
export const equipmentEntryBodies = {
  'instrument.added': z.strictObject({ instrumentId: id, ...instrumentFieldsSchema.shape }),
  'instrument.changed': z.strictObject({ instrumentId: id, before: instrumentFieldsSchema, after: instrumentFieldsSchema, reason: longText }),
  'instrument.calibrated': z.strictObject({ instrumentId: id, calibrationId: id, ...calibrationSchema.shape }),
  /** A calibration that was entered wrongly counts no more. */
  'calibration.voided': z.strictObject({ instrumentId: id, calibrationId: id, reason }),
  'instrument.retired': z.strictObject({ instrumentId: id, reason }),
  'instrument.returned': z.strictObject({ instrumentId: id, reason }),
  'fluid.added': z.strictObject({ fluidId: id, ...fluidFieldsSchema.shape }),
  'fluid.changed': z.strictObject({ fluidId: id, before: fluidFieldsSchema, after: fluidFieldsSchema, reason: longText }),
  'fluid.retired': z.strictObject({ fluidId: id, reason }),
  'fluid.returned': z.strictObject({ fluidId: id, reason }),
} as const;

export type InstrumentFields = z.output<typeof instrumentFieldsSchema>;
export type FluidFields = z.output<typeof fluidFieldsSchema>;
export type FluidKind = FluidFields['kind'];
