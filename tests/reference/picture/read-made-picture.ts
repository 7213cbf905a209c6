import type { AreaReading } from '../../../shared-lib/picture/area-reading.ts';
import { regionLevels } from '../../../shared-lib/picture/region-levels.ts';
import { removedArea } from '../../../shared-lib/picture/removed-area.ts';
import { startThreshold } from '../../../shared-lib/picture/start-threshold.ts';
import { madePicture, type Making } from './made-picture.ts';

/** Reads a made picture, from the threshold that the program begins with where none is given. */
export function read(making: Making, reading: Partial<AreaReading> = {}) {
  const { picture, removedPixels, removedPct } = madePicture(making);
  const whole = { kind: 'rectangle' as const, x: 0, y: 0, width: picture.width, height: picture.height };
  const used = { region: whole, removed: making.bare > making.print ? ('lighter' as const) : ('darker' as const), light: 'as-is' as const, smooth: false, ...reading };
  const levels = regionLevels(picture, used);
  const threshold = reading.threshold ?? startThreshold(levels);
  return { truth: removedPct, removedPixels, area: removedArea(levels, { threshold, removed: used.removed }) };
}
