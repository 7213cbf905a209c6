import { InputError } from '../calculation/input-error.ts';
import type { Flag } from '../calculation/result.ts';
import type { BenchReadings, BenchRow, PhotoField } from '../method/method.ts';
import { numberIn, textIn } from '../method/sheet.ts';

/** Beside the percent judged by eye. */
export const photoField: PhotoField = { kind: 'photo', key: 'photo', label: 'or from a photograph' };

/** Percent removed in a photograph, with its 95 % interval. */
export interface PhotoRemoved {
  removed: { removedPct: number; removedLowPct: number; removedHighPct: number };
  flags: Flag[];
}

/**
 * The percent removed that a row's photograph measures; `null` where the row has none.
 * @throws InputError when the photograph cannot be measured, or a percent was typed as well
 */
export function photoRemoved(bench: BenchReadings, index: number): PhotoRemoved | null {
  const { values } = bench.rows[index]!;
  const key = textIn(values, photoField.key);
  if (key === undefined) return null;
  const photo = bench.photos?.[key];
  if (!photo?.area) throw new InputError(`rows[${index}].photo`, null, photo?.problem ?? 'The photograph is missing.');
  if (values.removedPct != null) throw new InputError(`rows[${index}].removedPct`, values.removedPct, 'Percent and photograph are both given: clear the percent, or the photograph, so that one of them counts.');
  const { value, low, high } = photo.area.removedPct;
  return { removed: { removedPct: value!, removedLowPct: low!, removedHighPct: high! }, flags: photo.area.flags.map((flag) => ({ ...flag, where: `rows[${index}].photo` })) };
}

/** The percent removed of a row: as its photograph measures it, else as typed. */
export function removedIn(values: BenchRow['values'], photo: PhotoRemoved | null | undefined): PhotoRemoved['removed'] | { removedPct: number | undefined } {
  return photo?.removed ?? { removedPct: numberIn(values, 'removedPct') };
}
