import type { Standing } from '../equipment/standing.ts';
import type { Swatch } from '../calculation/result.ts';
import type { DifferenceFormula } from '../colour/difference-formulas.ts';
import type { ReferenceColour } from '../method/reference-colour.ts';
import type { SpectraReading } from './colour-entries.ts';

/** What a customer still takes. */
export interface ToleranceView {
  customer: string;
  formula: DifferenceFormula;
  limit: number;
  cmcL: number;
  cmcC: number;
  deltaL: number | null;
  deltaC: number | null;
  deltaH: number | null;
  /** The same in words. */
  text: string;
}

/** A reference colour as Materials lists it: the edition that is in use. */
export interface ReferenceView extends ReferenceColour {
  note: string;
  /** Under its own light, from the spectrum where there is one. */
  colour: { L: number; a: number; b: number };
  /** The same for the screen. */
  swatch: Swatch;
  /** 'spectrum 400–700 nm by 10, 4.1 to 62.3 %' or 'L*, a*, b*'. */
  known: string;
  /** 'D50, 2°, M1, 45:0' */
  light: string;
  fileName: string;
  tolerances: ToleranceView[];
  addedAt: string;
  /** ISO 8601, or `null` while it is in use. */
  retiredAt: string | null;
  retiredReason: string;
  /** Editions before it. */
  editions: number;
}

/** What a type-ahead offers for an item field of a bench sheet. */
export interface ItemChoice {
  /** What is put into the cell. */
  typed: string;
  detail: string;
  /** Of what has a last day, e.g. a calibration. */
  standing?: Standing;
}

/** The spectra of a file and how they were read, for the person to confirm or change. */
export interface SpectraPreview {
  lines: string[];
  reading: SpectraReading;
  spectra: { name: string; words: string; wavelengthsNm: number[]; percent: number[]; warning: string }[];
  notes: string[];
}
