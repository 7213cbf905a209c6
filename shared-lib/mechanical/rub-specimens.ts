import { InputError } from '../calculation/input-error.ts';
import type { Flag } from '../calculation/result.ts';
import type { Lasting } from '../statistics/least-lasting.ts';

/** One look at a specimen after so many strokes. */
export interface RubReading {
  specimen?: string | undefined;
  strokes: number;
  density?: number | undefined;
  transferred?: number | undefined;
}

/** A quantity of one specimen against strokes, from 0 strokes on. */
export interface RubSeries {
  strokes: number[];
  values: number[];
}

export interface RubSpecimen {
  name: string;
  /** Density lost and the same in percent of the ink's density at the start; `null` where density was not read. */
  lost: RubSeries | null;
  lostPct: RubSeries | null;
  /** Density on the receptor above that of the clean one; `null` where it was not read. */
  transferred: RubSeries | null;
  /** Most strokes it was rubbed. */
  strokes: number;
}

/**
 * Readings by specimen, each in the order of its strokes.
 * @param ground density of the unprinted film, where the print's was not read above it; `clean` of the clean receptor.
 * @throws InputError (`readings[i].KEY`) for strokes that do not rise, a density without the one before rubbing, a print
 *   no darker than its ground, or a reading without any density.
 */
export function rubSpecimens(readings: readonly RubReading[], ground: number, clean: number): RubSpecimen[] {
  const names = [...new Set(readings.map(({ specimen }) => specimen ?? ''))];
  return names.map((name) => specimenOf(readings.flatMap((reading, index) => ((reading.specimen ?? '') === name ? [{ ...reading, index }] : [])), name || '1', ground, clean));
}

type Indexed = RubReading & { index: number };

function specimenOf(readings: readonly Indexed[], name: string, ground: number, clean: number): RubSpecimen {
  readings.forEach(({ strokes, density, transferred, index }, place) => {
    const before = readings[place - 1];
    if (before && strokes <= before.strokes) {
      throw new InputError(`readings[${index}].strokes`, strokes, `strokes must rise from reading to reading: specimen ${name} has ${strokes} after ${before.strokes}; enter the strokes so far.`);
    }
    if (density === undefined && transferred === undefined) throw new InputError(`readings[${index}].density`, null, `density is missing: at ${strokes} strokes specimen ${name} needs its density, that transferred, or both.`);
  });
  const read = readings.filter(({ density }) => density !== undefined);
  const start = read[0];
  if (start && start.strokes !== 0) throw new InputError(`readings[${start.index}].strokes`, start.strokes, `strokes must begin with 0: specimen ${name} needs its density before rubbing.`);
  if (start && start.density! <= ground) throw new InputError(`readings[${start.index}].density`, start.density, `density before rubbing must lie above that of the unprinted film (${ground}); specimen ${name} has ${start.density}.`);
  const lost = start ? { strokes: read.map(({ strokes }) => strokes), values: read.map(({ density }) => difference(start.density!, density!)) } : null;
  const moved = readings.filter(({ transferred, strokes }) => transferred !== undefined && strokes > 0);
  const last = readings.at(-1)!;
  if (last.strokes === 0) throw new InputError(`readings[${last.index}].strokes`, 0, `strokes must go beyond 0: specimen ${name} has not been rubbed.`);
  return {
    name,
    lost,
    lostPct: lost && { strokes: lost.strokes, values: lost.values.map((value) => (100 * value) / (start!.density! - ground)) },
    transferred: moved.length === 0 ? null : { strokes: [0, ...moved.map(({ strokes }) => strokes)], values: [0, ...moved.map(({ transferred }) => difference(transferred!, clean))] },
    strokes: last.strokes,
  };
}

/** Without the dust of binary fractions, which would pass for a spread between specimens that read alike. */
function difference(a: number, b: number): number {
  return Number((a - b).toFixed(9));
}

/** Strokes at which a series first reaches `limit`, on straight lines between its readings; `ended: false` if it never did. */
export function strokesTo({ strokes, values }: RubSeries, limit: number): Lasting {
  // 1.00 to 0.90 is a loss of 10 %, whatever binary fractions make of it.
  const reached = values.findIndex((value) => value >= limit * (1 - 1e-9));
  if (reached === -1) return { value: strokes.at(-1)!, ended: false };
  const [from, to] = [values[reached - 1]!, values[reached]!];
  const between = strokes[reached - 1]! + ((limit - from) / (to - from)) * (strokes[reached]! - strokes[reached - 1]!);
  // Rounding of the densities must not put a specimen on the wrong side of a limit in whole strokes; a limit next to nothing must not end it at 0.
  return { value: Number(between.toFixed(6)) || between, ended: true };
}

/** A rise of this much density, or a fall back below the limit, is more than a densitometer's scatter (common practice). */
const SCATTER = 0.03;

/** Readings that a rub cannot explain. */
export function rubFlags(specimens: readonly RubSpecimen[]): Flag[] {
  const back = ({ strokes, values }: RubSeries) => {
    const at = values.findIndex((value, index) => index > 0 && value < Math.max(...values.slice(0, index)) - SCATTER);
    return at === -1 ? null : strokes[at]!;
  };
  return specimens.flatMap(({ name, lost, transferred }) => {
    const found: Flag[] = [];
    const darker = lost && back(lost);
    if (darker !== null) found.push({ code: 'density-rose', where: `specimen ${name}`, text: `Specimen ${name} became denser again at ${darker} strokes: ink smeared back, or another place was read.` });
    const cleaner = transferred && back(transferred);
    if (cleaner !== null) found.push({ code: 'transfer-fell', where: `specimen ${name}`, text: `The receptor of specimen ${name} became lighter at ${cleaner} strokes: read the same receptor all along, or enter what has come off so far.` });
    return found;
  });
}
