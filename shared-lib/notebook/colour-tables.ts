import type { DifferenceFormula } from '../colour/difference-formulas.ts';
import type { ReferenceColour } from '../method/reference-colour.ts';

/** Reference colours, and the files that spectra came from. See `tables.ts`. */
export interface ColourTables {
  reference_colour: {
    referenceId: string;
    name: string;
    spectrum: string | null;
    L: number | null;
    a: number | null;
    b: number | null;
    illuminant: ReferenceColour['illuminant'];
    observer: 2 | 10;
    condition: ReferenceColour['condition'];
    geometry: ReferenceColour['geometry'];
    note: string;
    /** JSON: the file of its spectrum. */
    file: string | null;
    replacedBy: string | null;
    retiredAt: string | null;
    retiredReason: string;
    addedAt: string;
    addedBy: string;
    addedSeq: number;
  };
  reference_tolerance: {
    referenceId: string;
    customer: string;
    formula: DifferenceFormula;
    limit: number;
    cmcL: number;
    cmcC: number;
    deltaL: number | null;
    deltaC: number | null;
    deltaH: number | null;
    seq: number;
  };
  /** The file that the spectrum of a cell came from, as JSON; it holds while `seq` is the last entry of the cell. */
  spectrum_file: { testId: string; row: string; key: string; file: string; seq: number };
}
