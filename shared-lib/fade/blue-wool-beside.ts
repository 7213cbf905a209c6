import { InputError } from '../calculation/input-error.ts';
import type { Flag, ResultValue } from '../calculation/result.ts';
import { meanOf } from '../statistics/summarise.ts';
import { valueWithoutInterval } from '../calculation/value-without-interval.ts';
import { blueWoolResult } from './blue-wool-result.ts';
import type { ColourFade } from './colour-fade.ts';
import type { ExposedReading } from './exposed-patches.ts';

/** Blue-wool references exposed beside the prints: one list of readings for each patch of reference 1 to 8. */
export type BlueWoolPatches = { reference: number; patch: ExposedReading[] }[];

/**
 * Light fastness of a colour by the references that were read at its last exposure as well.
 * @param notes takes what the rating rests on, the colour's name in front
 */
export function blueWoolBeside({ name, last }: ColourFade, references: BlueWoolPatches, flags: Flag[], notes: string[]): ResultValue {
  const at = [...new Set(references.map(({ reference }) => reference))].flatMap((reference) => {
    const changes = references
      .filter((one) => one.reference === reference)
      .flatMap(({ patch }) => patch.filter(({ exposure, deltaEF }) => exposure === last.exposure && deltaEF !== null).map(({ deltaEF }) => deltaEF!));
    return changes.length === 0 ? [] : [{ reference, deltaEF: meanOf(changes) }];
  });
  const of = name === '' ? '' : `${name}: `;
  if (at.length === 0 || last.results.deltaEF.value === null) {
    notes.push(`${of}no light fastness: it needs the colour of print and blue-wool references at the same exposure, ${last.exposure}.`);
    return valueWithoutInterval(null, '', 0);
  }
  const own: Flag[] = [];
  const said: string[] = [];
  const rating = blueWoolResult(last.results.deltaEF, at, own, said);
  // The references are the same for every colour: their disorder is told once.
  flags.push(...own.filter((flag) => !flags.some((other) => other.code === flag.code && other.text === flag.text)));
  notes.push(...said.map((text) => `${of}${text}`));
  return rating;
}

/** @throws InputError for a reference that was not read as a colour */
export function requireColour(places: readonly number[], readings: readonly { lab?: unknown; blueWool?: number | undefined }[]): void {
  const place = places.find((index) => readings[index]!.lab === undefined);
  if (place !== undefined) throw new InputError(`readings[${place}].lab`, null, `Blue-wool reference ${readings[place]!.blueWool} is compared by its colour; read L*, a* and b*.`);
}
