import type { Flag } from '../calculation/result.ts';
import type { SpectralGrid } from './spectral-grid.ts';

/** Flags of a grid on which an evaluation is less sure than on 380–780 nm at 10 nm or finer. */
export function spectralRangeFlags({ startNm, stepNm, count }: SpectralGrid): Flag[] {
  const endNm = startNm + (count - 1) * stepNm;
  const flags: Flag[] = [];
  if (startNm > 380 || endNm < 780) {
    flags.push({
      code: 'short-range',
      where: 'wavelengthsNm',
      text: `The spectrum covers ${startNm}–${endNm} nm; the weights of wavelengths beyond were added to its first and last reading (ASTM E308, 7.3.2.2), as if reflectance stayed level there.`,
    });
  }
  if (stepNm === 20) {
    flags.push({ code: 'coarse-steps', where: 'wavelengthsNm', text: 'Steps of 20 nm were interpolated; a steep edge or narrow band may shift the result by several tenths. Measure at 10 nm where it matters.' });
  }
  return flags;
}
