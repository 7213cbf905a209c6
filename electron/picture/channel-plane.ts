import type { PhotoChannel } from '../../shared-lib/notebook/attachment-entries.ts';
import type { GreyPicture } from '../../shared-lib/picture/picture.ts';
import type { DecodedPicture } from './decode-picture.ts';

/** One colour of a picture, or how light it is (luma of ITU-R BT.709). */
export function channelPlane({ width, height, rgb }: DecodedPicture, channel: PhotoChannel): GreyPicture {
  const [red, green, blue] = channel === 'grey' ? [0.2126, 0.7152, 0.0722] : [Number(channel === 'red'), Number(channel === 'green'), Number(channel === 'blue')];
  const grey = new Uint8Array(width * height);
  for (let index = 0; index < grey.length; index++) grey[index] = Math.round(red * rgb[3 * index]! + green * rgb[3 * index + 1]! + blue * rgb[3 * index + 2]!);
  return { width, height, grey };
}
