import { z } from 'zod';
import { measurementConditions, measurementGeometries, referenceIlluminants } from '../method/reference-colour.ts';

const id = z.string().min(1).max(64);
const shortText = z.string().max(200);
const longText = z.string().max(20_000);
const sha256 = z.string().length(64);

/** How the columns and rows of a file of spectra were read. */
export const spectraReadingSchema = z.strictObject({
  format: z.enum(['csv', 'cgats', 'cxf']),
  /** '' where the format itself parts the columns. */
  delimiter: z.string().max(1),
  decimal: z.enum(['.', ',']),
  /** Whether each spectrum stands in a column or in a row. */
  layout: z.enum(['columns', 'rows']),
  /** Where the file has no wavelengths. */
  fromNm: z.number().min(200).max(1100).nullable(),
  stepNm: z.number().min(0.1).max(50).nullable(),
  scale: z.enum(['percent', 'fraction']),
});

/** From which file a spectrum came: the attachment, how it was read, and which of its spectra it is. */
const fileOfSpectrum = z.strictObject({ sha256, reading: spectraReadingSchema, place: z.number().int().nonnegative(), name: shortText });

/** What is said of a reference colour. */
export const referenceFields = {
  name: shortText.min(1),
  /** Text of `colour/spectrum-text.ts`. */
  spectrum: longText.nullable(),
  lab: z.strictObject({ L: z.number(), a: z.number(), b: z.number() }).nullable(),
  illuminant: z.enum(referenceIlluminants),
  observer: z.literal([2, 10]),
  condition: z.enum(measurementConditions).nullable(),
  geometry: z.enum(measurementGeometries).nullable(),
  note: longText,
};

/** What a customer still takes. */
export const toleranceFields = {
  customer: shortText.min(1),
  formula: z.enum(['deltaEab', 'deltaE94', 'deltaECMC', 'deltaE00']),
  /** At most so much by that formula. */
  limit: z.number().gt(0).max(100),
  /** Weights of CMC; ignored by the others. */
  cmcL: z.number().gt(0).max(10),
  cmcC: z.number().gt(0).max(10),
  /** Either way, where the customer limits them as well. */
  deltaL: z.number().gt(0).max(100).nullable(),
  deltaC: z.number().gt(0).max(100).nullable(),
  deltaH: z.number().gt(0).max(100).nullable(),
};

/** Entries about reference colours and spectra. */
export const colourEntryBodies = {
  /** `replaces`: a new edition takes the place of that one, which stays with the tests that were made against it. */
  'reference.added': z.strictObject({
    referenceId: id,
    ...referenceFields,
    file: fileOfSpectrum.nullable(),
    replaces: z.strictObject({ referenceId: id, reason: longText.min(1) }).nullable(),
  }),
  /** The reason is asked for once the customer had a tolerance on this reference. */
  'tolerance.set': z.strictObject({ referenceId: id, ...toleranceFields, reason: longText }),
  /** Not offered for new tests any more; it stays with those that were made against it. */
  'reference.retired': z.strictObject({ referenceId: id, reason: longText.min(1) }),
  'reference.returned': z.strictObject({ referenceId: id, reason: longText.min(1) }),
  /** A spectrum of a file read into a cell; `row` is '' for a condition. */
  'spectrum.read': z.strictObject({
    testId: id,
    row: z.string().max(20),
    key: z.string().max(100),
    value: longText.min(1),
    file: fileOfSpectrum,
    /** Given when it takes the place of another. */
    reason: longText,
  }),
} as const;

export type SpectraReading = z.output<typeof spectraReadingSchema>;
