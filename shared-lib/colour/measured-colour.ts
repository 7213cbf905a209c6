import { z } from 'zod';
import { InputError } from '../calculation/input-error.ts';
import type { Flag } from '../calculation/result.ts';
import type { Illuminant } from './illuminants.ts';
import { labSchema, type Lab } from './lab.ts';
import type { MeasurementLight } from './measurement-light.ts';
import { observerWeights, type ObserverWeights } from './observer-weights.ts';
import { readReflectance } from './reflectance-scale.ts';
import { holdToBands } from './spectra-input.ts';
import { gridOf, type SpectralGrid } from './spectral-grid.ts';
import { spectralRangeFlags } from './spectral-range-flags.ts';
import { spectrumInputSchema } from './spectrum.ts';
import { labFromXyz, type Xyz } from './xyz.ts';
import { xyzFromSpectrum } from './xyz-from-spectrum.ts';

/** A colour as it was measured: L*, a*, b*, or the spectrum that they follow from. */
export const measuredColourSchema = z.union([z.strictObject({ lab: labSchema }), spectrumInputSchema]);
export type MeasuredColour = z.output<typeof measuredColourSchema>;

/** A measured colour under one light. */
export interface ColourUnderLight {
  lab: Lab;
  /** `null` where only L*, a*, b* were measured. */
  xyz: Xyz | null;
  /** Reflectances 0–1; `null` likewise. */
  curve: { grid: SpectralGrid; values: number[] } | null;
}

/** Colours under one light, each with what must be said of its spectrum. */
export class ColourComputer {
  readonly #weights = new Map<string, ObserverWeights>();

  constructor(private readonly light: Pick<MeasurementLight, 'illuminant' | 'observer'> | undefined) {}

  /**
   * @param field of the colour in the input, for refusals
   * @throws InputError for a spectrum that cannot be used, or without a light that has weights
   */
  of(colour: MeasuredColour, field: string): ColourUnderLight & { flags: Flag[] } {
    if ('lab' in colour) return { lab: colour.lab, xyz: null, curve: null, flags: [] };
    const grid = gridOf(colour.wavelengthsNm, `${field}.wavelengthsNm`);
    holdToBands([colour.reflectance], grid.count, `${field}.reflectance`);
    const { fractions, flags } = readReflectance([colour.reflectance], colour.scale, `${field}.reflectance`);
    const values = fractions[0]!;
    const weights = this.#weightsFor(grid);
    const xyz = xyzFromSpectrum(weights, values);
    return { lab: labFromXyz(xyz, weights.white), xyz, curve: { grid, values }, flags: [...flags, ...spectralRangeFlags(grid)] };
  }

  #weightsFor(grid: SpectralGrid): ObserverWeights {
    if (this.light === undefined) throw new InputError('sampleLight', null, 'A spectrum gives a colour only under a light: state illuminant and observer.');
    const { illuminant, observer } = this.light;
    if (illuminant === 'C') throw new InputError('sampleLight', 'C', 'There are no weights for illuminant C here; choose A, D50, D65, F2 or F11 for spectra.');
    const key = `${grid.startNm} ${grid.stepNm} ${grid.count}`;
    const known = this.#weights.get(key);
    if (known) return known;
    const weights = observerWeights(grid, illuminant satisfies Illuminant, observer);
    this.#weights.set(key, weights);
    return weights;
  }
}

/** The mean of several measurements of one colour: of L*, a*, b* each, and of X, Y, Z where all have spectra. */
export function meanColour(colours: readonly ColourUnderLight[]): { lab: Lab; xyz: Xyz | null } {
  const mean = (values: readonly (readonly [number, number, number])[]): [number, number, number] => [0, 1, 2].map((place) => values.reduce((sum, value) => sum + value[place]!, 0) / values.length) as [number, number, number];
  const xyz = colours.flatMap((colour) => (colour.xyz === null ? [] : [colour.xyz]));
  return { lab: mean(colours.map(({ lab }) => lab)), xyz: xyz.length === colours.length ? mean(xyz) : null };
}
