import type { Bounds } from '../../shared-lib/picture/region.ts';
import { maskLook, STROKES } from '../../shared-lib/picture/mask-look.ts';
import type { DecodedPicture } from './decode-picture.ts';

/** The picture with the pixels of `mask`, which begins at `bounds`, marked as on screen. */
export function drawMask<Picture extends Pick<DecodedPicture, 'width' | 'rgb'>>(picture: Picture, mask: Uint8Array, bounds: Bounds): Picture {
  const rgb = picture.rgb.slice();
  const period = Math.max(4, Math.round(picture.width / STROKES));
  for (let index = 0; index < mask.length; index++) {
    const look = maskLook(mask, bounds.width, index, period);
    if (!look) continue;
    const at = 3 * ((bounds.y + Math.floor(index / bounds.width)) * picture.width + bounds.x + (index % bounds.width));
    for (let colour = 0; colour < 3; colour++) rgb[at + colour] = Math.round(rgb[at + colour]! + ((look[colour]! - rgb[at + colour]!) * look[3]) / 255);
  }
  return { ...picture, rgb };
}
