import { z } from 'zod';
import { defineCalculation } from '../calculation/calculation.ts';
import { InputError } from '../calculation/input-error.ts';
import { valueWithoutInterval } from '../calculation/value-without-interval.ts';
import { areaReadingSchema } from './area-reading.ts';
import type { GreyPicture } from './picture.ts';
import { regionLevels } from './region-levels.ts';
import { removedArea } from './removed-area.ts';
import { startThreshold } from './start-threshold.ts';

const MOST_PIXELS = 4_000_000;

const input = z.strictObject({
  /** Rows from the top; 0 black to 255 white, coded as in an sRGB picture. */
  grey: z.array(z.array(z.number().int().min(0).max(255)).min(1).max(20_000)).min(1).max(20_000),
  /** Left out: the whole grid. */
  region: areaReadingSchema.shape.region.optional(),
  removed: areaReadingSchema.shape.removed.default('lighter'),
  /** Left out: half way between print and bare places. */
  threshold: areaReadingSchema.shape.threshold.optional(),
  light: areaReadingSchema.shape.light,
  smooth: areaReadingSchema.shape.smooth,
});

export const removedAreaCalculation = defineCalculation({
  id: 'removed-area',
  version: '1',
  title: 'Removed area in a picture',
  input,
  compute: ({ grey, region, removed, threshold, light, smooth }) => {
    const picture = pictureOf(grey);
    const whole = { kind: 'rectangle' as const, x: 0, y: 0, width: picture.width, height: picture.height };
    const reading = { region: region ?? whole, removed, light, smooth };
    const levels = regionLevels(picture, reading);
    const used = threshold ?? startThreshold(levels);
    const area = removedArea(levels, { threshold: used, removed });
    const plain = (value: number | null) => valueWithoutInterval(value, '', value === null ? 0 : 1);
    return {
      results: { removedPct: area.removedPct, threshold: plain(used), contrast: plain(area.contrast), printGrey: plain(area.printGrey), bareGrey: plain(area.bareGrey) },
      table: [{ pixels: area.pixels, removedPixels: area.removedPixels }],
      flags: area.flags,
      notes: ['The interval says how well this picture was read, not how far specimens differ.'],
    };
  },
  columns: [
    { key: 'pixels', title: 'Pixels in the region' },
    { key: 'removedPixels', title: 'Pixels removed' },
  ],
  cautions: [],
  sources: [
    'N. Otsu, IEEE Trans. Syst. Man Cybern. 9 (1979) 62 (first threshold)',
    'T. W. Ridler, S. Calvard, IEEE Trans. Syst. Man Cybern. 8 (1978) 630 (threshold half way between the sides)',
    'IEC 61966-2-1 (how grey is coded)',
    'Interval: own model, checked on made pictures of known area',
  ],
});

/** @throws InputError on `grey` for rows of different length or too many pixels */
function pictureOf(rows: number[][]): GreyPicture {
  const width = rows[0]!.length;
  const odd = rows.findIndex((row) => row.length !== width);
  if (odd !== -1) throw new InputError(`grey[${odd}]`, rows[odd]!.length, `grey[${odd}] has ${rows[odd]!.length} values and the first row ${width}; all rows must be as long.`);
  if (width * rows.length > MOST_PIXELS) throw new InputError('grey', width * rows.length, `grey has ${width * rows.length} values; at most ${MOST_PIXELS} can be read.`);
  return { width, height: rows.length, grey: Uint8Array.from(rows.flat()) };
}
