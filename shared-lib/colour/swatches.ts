import type { SwatchPair } from '../calculation/result.ts';
import type { MeasurementLight } from './measurement-light.ts';
import type { Lab } from './lab.ts';
import { screenColour } from './srgb.ts';
import { whitePoint } from './white-point.ts';

/** Reference and sample side by side, as near as a screen comes to them. */
export function swatchPair(reference: { name: string; lab: Lab }, sample: { name: string; lab: Lab }, { illuminant, observer }: Pick<MeasurementLight, 'illuminant' | 'observer'>): SwatchPair {
  const white = whitePoint(illuminant, observer);
  const left = screenColour(reference.lab, white);
  const right = screenColour(sample.lab, white);
  const beyond = [...(left.outOfGamut ? ['the reference'] : []), ...(right.outOfGamut ? ['the sample'] : [])];
  return {
    title: 'Reference and sample',
    left: { name: reference.name, colour: left.hex },
    right: { name: sample.name, colour: right.hex },
    note: `Approximate on screen and in print; never judge a match by it.${beyond.length === 0 ? '' : ` ${beyond.join(' and ').replace(/^t/, 'T')} ${beyond.length === 1 ? 'lies' : 'lie'} beyond what an sRGB screen can show.`}`,
  };
}
