import { describe, expect, it } from 'vitest';
import { InputError } from '../../../shared-lib/calculation/input-error.ts';
import type { AreaReading } from '../../../shared-lib/picture/area-reading.ts';
import { plain, type Making } from './made-picture.ts';
import { read } from './read-made-picture.ts';

// The truth beside each picture is the count of removed pixels before blur, grain and light were put on it.

describe('the area of a made picture', () => {
  it.each([0.005, 0.05, 0.2, 0.5, 0.9])('is exact without blur and grain, %f removed', (share) => {
    const { removedPixels, area } = read({ ...plain, share });
    expect(area.removedPixels).toBe(removedPixels);
    expect(area.removedPct.value).toBeCloseTo((100 * removedPixels) / area.pixels, 9);
  });

  it.each<[string, Partial<Making>, Partial<AreaReading>]>([
    ['grain', { grain: 12 }, {}],
    ['strong grain, smoothed', { grain: 25, print: 70, bare: 190 }, { smooth: true }],
    ['blur of the lens', { blur: 1 }, {}],
    ['blur put on by a program', { blur: 1, blurIn: 'grey' }, {}],
    ['blur and grain', { blur: 1.2, grain: 8 }, {}],
    ['dark patches in light print', { print: 210, bare: 90, grain: 8, blur: 0.8 }, {}],
    ['little contrast, little grain', { print: 120, bare: 150, grain: 3 }, {}],
    ['light from one side', { slope: 0.9, grain: 5 }, { light: 'both' }],
    ['light from one side, of which the threshold alone makes nonsense', { slope: 1.1, print: 110, bare: 170, grain: 3 }, { light: 'both' }],
    ['light that falls off to the corners', { vignette: 0.5, grain: 5, blur: 0.8 }, { light: 'both' }],
    ['light read from the print', { slope: 0.6, vignette: 0.3, grain: 5 }, { light: 'print' }],
    ['light read from the bare places', { slope: 0.6, vignette: 0.3, grain: 5, share: 0.6 }, { light: 'bare' }],
    ['a few small spots', { share: 0.004, patch: 3, grain: 6 }, {}],
  ])('is right to 1 % of the region with %s', (_name, making, reading) => {
    const { truth, area } = read({ ...plain, ...making }, reading);
    expect(Math.abs(area.removedPct.value! - truth)).toBeLessThanOrEqual(1);
    expect(area.removedPct.low!).toBeLessThanOrEqual(truth);
    expect(area.removedPct.high!).toBeGreaterThanOrEqual(truth);
  });

  it.each<[string, Partial<Making>, Partial<AreaReading>]>([
    ['grain as large as the contrast', { print: 110, bare: 150, grain: 15 }, {}],
    ['nothing removed and no threshold chosen', { share: 0, grain: 8 }, {}],
    ['uneven light left as it is', { slope: 1.4, print: 100, bare: 150, grain: 6 }, {}],
  ])('is refused with the reason where the contrast does not allow it: %s', (_name, making, reading) => {
    expect(() => read({ ...plain, ...making }, reading)).toThrow(InputError);
    expect(() => read({ ...plain, ...making }, reading)).toThrow(/run into one another here: their greys lie \d\.\d standard deviations apart/);
  });

  it('is nothing where the threshold is moved until nothing is marked, and says what that cannot show', () => {
    const { area } = read({ ...plain, share: 0, grain: 5 }, { threshold: 130 });
    expect(area.removedPct.value).toBe(0);
    expect(area.removedPct.high!).toBeLessThan(0.1);
    expect(area.flags.map(({ code }) => code)).toEqual(['one-sided']);
  });
});

describe('a threshold put elsewhere', () => {
  it('is pointed out, and widens the interval to the side where grain comes in', () => {
    const { truth, area } = read({ ...plain, grain: 14 }, { threshold: 90 });
    expect(area.flags.map(({ code }) => code)).toContain('threshold-off-middle');
    expect(area.removedPct.value!).toBeGreaterThan(truth);
    expect(area.removedPct.low!).toBeLessThanOrEqual(truth);
  });

  it('in the midst of the grain of the print widens the interval to the truth', () => {
    const { truth, area } = read({ ...plain, grain: 6 }, { threshold: 62 });
    expect(area.removedPct.value!).toBeGreaterThan(truth + 20);
    expect(area.removedPct.low!).toBeLessThanOrEqual(truth);
    expect(area.flags.map(({ code }) => code)).toContain('threshold-off-middle');
  });
});
