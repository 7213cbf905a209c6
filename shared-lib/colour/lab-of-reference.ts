import type { ReferenceColour } from '../method/reference-colour.ts';
import type { Lab } from './lab.ts';
import { ColourComputer } from './measured-colour.ts';
import { spectrumOf } from './spectrum-text.ts';
import { asSpectrumInput } from './spectrum.ts';

/** L*, a*, b* of a reference colour under its own light, from the spectrum where there is one. */
export function labOfReference({ spectrum, lab, illuminant, observer }: Pick<ReferenceColour, 'spectrum' | 'lab' | 'illuminant' | 'observer'>): Lab {
  if (spectrum === null) return [lab!.L, lab!.a, lab!.b];
  return new ColourComputer({ illuminant, observer }).of(asSpectrumInput(spectrumOf(spectrum)), 'spectrum').lab;
}
