/** A reference colour of the notebook: its spectrum, or its L*, a*, b* under one light. It never changes; a new edition has a new id. */
export interface ReferenceColour {
  referenceId: string;
  name: string;
  /** Text of `colour/spectrum-text.ts`; `null` where only L*, a*, b* are known. */
  spectrum: string | null;
  lab: { L: number; a: number; b: number } | null;
  /** The light that `lab` holds for; for a spectrum the light under which it is to be compared first. */
  illuminant: ReferenceIlluminant;
  observer: 2 | 10;
  /** By ISO 13655, as far as stated: M0 to M3. */
  condition: MeasurementCondition | null;
  /** Of the instrument, as far as stated. */
  geometry: MeasurementGeometry | null;
}

export const referenceIlluminants = ['D50', 'D65', 'A', 'F2', 'F11', 'C'] as const;
export type ReferenceIlluminant = (typeof referenceIlluminants)[number];

export const measurementConditions = ['M0', 'M1', 'M2', 'M3'] as const;
export type MeasurementCondition = (typeof measurementConditions)[number];

export const measurementGeometries = ['45:0', 'd:8 without gloss', 'd:8 with gloss'] as const;
export type MeasurementGeometry = (typeof measurementGeometries)[number];
