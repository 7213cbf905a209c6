import Color from 'colorjs.io';
import { converter } from 'culori';
import { describe, expect, it } from 'vitest';
import type { Lab } from '../../../shared-lib/colour/lab.ts';
import { screenColour } from '../../../shared-lib/colour/srgb.ts';
import { whitePoint } from '../../../shared-lib/colour/white-point.ts';
import { seededRandom } from '../../../shared-lib/statistics/random.ts';

const random = seededRandom(17972);
const labs: Lab[] = Array.from({ length: 2000 }, () => [5 + 90 * random.uniform(), 160 * random.uniform() - 80, 160 * random.uniform() - 80]);
const toRgb = converter('rgb');
const inGamut = (rgb: readonly number[]) => rgb.every((value) => value >= 0 && value <= 1);

/** Half a step of the 256 that a channel has: nothing finer is shown. White points differ in their fourth or fifth digit. */
const CLOSE = 0.5 / 255;

describe('colours on screen (IEC 61966-2-1) against general-purpose libraries', () => {
  it('D65, 2°: culori', () => {
    let compared = 0;
    for (const [l, a, b] of labs) {
      const { r, g, b: blue } = toRgb({ mode: 'lab65', l, a, b })!;
      if (!inGamut([r, g, blue])) continue;
      const { rgb, outOfGamut } = screenColour([l, a, b], whitePoint('D65', 2));
      expect(outOfGamut).toBe(false);
      [r, g, blue].forEach((value, channel) => expect(Math.abs(rgb[channel]! - value)).toBeLessThan(CLOSE));
      compared += 1;
    }
    expect(compared).toBeGreaterThan(300);
  });

  it('D50, 2°, adapted: colorjs.io', () => {
    let compared = 0;
    for (const lab of labs) {
      const expected = new Color('lab', [...lab]).to('srgb').coords.map(Number);
      const { rgb, outOfGamut } = screenColour(lab, whitePoint('D50', 2));
      if (!inGamut(expected)) {
        if (expected.some((value) => value < -0.01 || value > 1.01)) expect(outOfGamut).toBe(true);
        continue;
      }
      expected.forEach((value, channel) => expect(Math.abs(rgb[channel]! - value)).toBeLessThan(CLOSE));
      compared += 1;
    }
    expect(compared).toBeGreaterThan(300);
  });

  it.each(['D50', 'D65', 'A', 'F2', 'F11', 'C'] as const)('white and greys stay grey under %s', (illuminant) => {
    for (const observer of [2, 10] as const) {
      expect(screenColour([100, 0, 0], whitePoint(illuminant, observer)).hex).toBe('#ffffff');
      const { rgb } = screenColour([50, 0, 0], whitePoint(illuminant, observer));
      // L* 50 is Y 18.4187; encoded 1.055 · 0.184187^(1/2.4) − 0.055.
      for (const channel of rgb) expect(channel).toBeCloseTo(1.055 * 0.1841865 ** (1 / 2.4) - 0.055, 3);
    }
  });
});
