import type { AreaReading } from './area-reading.ts';
import { lightOver } from './even-light.ts';
import { levelsOf, type Levels } from './levels.ts';
import { medianOfNine } from './median-of-nine.ts';
import type { GreyPicture } from './picture.ts';
import { boundsOf, pixelsInside } from './region.ts';

/**
 * The grey of a region as it is compared with the threshold: grain and uneven light taken out where the reading says so.
 * @param picture in whose pixels `reading.region` is given
 * @throws InputError on `region` or `light`, see `pixelsInside` and `lightOver`
 */
export function regionLevels(picture: GreyPicture, reading: Omit<AreaReading, 'threshold'>): Levels {
  const { region, removed, light, smooth } = reading;
  const inside = pixelsInside(region, picture);
  const cropped = cropTo(picture, boundsOf(region));
  const part = smooth ? medianOfNine(cropped) : cropped;
  if (light === 'as-is') return levelsOf(part.width, part.height, inside, (index) => part.grey[index]!);
  const over = lightOver(part, inside, removed, light);
  return levelsOf(part.width, part.height, inside, (index) => part.grey[index]! / over[index]!);
}

/** A rectangle of the picture. */
export function cropTo(picture: GreyPicture, { x, y, width, height }: { x: number; y: number; width: number; height: number }): GreyPicture {
  const grey = new Uint8Array(width * height);
  for (let row = 0; row < height; row++) {
    const from = (y + row) * picture.width + x;
    grey.set(picture.grey.subarray(from, from + width), row * width);
  }
  return { width, height, grey };
}
