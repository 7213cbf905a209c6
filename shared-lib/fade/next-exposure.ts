import { InputError } from '../calculation/input-error.ts';
import type { BenchRow, DueReading, RunningReadings } from '../method/method.ts';
import { numberIn, textIn } from '../method/sheet.ts';
import { formatPlain } from '../quantity/format.ts';
import { daysAfter, isIsoDate } from '../quantity/iso-date.ts';
import { exposureOfRow } from './exposure-of-row.ts';
import { plannedExposures } from './planned-exposures.ts';
import { convertExposure, exposureUnits } from './radiant-exposure.ts';

const HOURS_PER_DAY = 24;
/** A reading so much short of the planned exposure counts as that one: lamps are not stopped to the minute. */
const NEAR = 0.02;

/**
 * The next planned exposure that not all patches of a running programme have been read at, due on the day on which it is
 * reached: days from the first of exposure, lamp hours by the hours of light in a day, radiant exposure by the irradiance.
 * None without a plan, or once it is fulfilled.
 */
export function nextExposure({ conditions, rows, startedOn }: RunningReadings): DueReading[] {
  const unit = exposureUnits.find((one) => one === textIn(conditions, 'exposureUnit')) ?? 'h';
  const farthest = farthestOfPatches(rows, conditions);
  const next = plan(textIn(conditions, 'readAt')).find((exposure) => farthest.size === 0 || [...farthest.values()].some((read) => read < exposure * (1 - NEAR)));
  if (next === undefined) return [];
  const hours = convertExposure(next, unit, 'h', numberIn(conditions, 'irradianceWPerM2'));
  if (hours === null) return [];
  const stated = textIn(conditions, 'exposedFrom');
  const from = stated !== undefined && isIsoDate(stated) ? stated : startedOn;
  const perDay = unit === 'd' ? HOURS_PER_DAY : (numberIn(conditions, 'hoursPerDay') ?? HOURS_PER_DAY);
  const waiting = [...farthest].filter(([, read]) => read < next * (1 - NEAR)).map(([patch]) => patch);
  const shown = `${formatPlain(next)} ${unit}`;
  return [
    {
      what: `Read the patches at ${shown}`,
      // The hour at which the exposure began is not known: a day that was begun counts as a whole one.
      dueOn: daysAfter(from, Math.ceil(hours / perDay - 1e-9)),
      why: `Planned exposure; in the light since ${from}${perDay === HOURS_PER_DAY ? '' : `, ${perDay} h a day`}${waiting.length > 0 && waiting.length < farthest.size ? `. Not read yet: ${waiting.join('; ')}` : ''}.`,
    },
  ];
}

/** A line that cannot be read plans nothing; the sheet says so. */
function plan(line: string | undefined): number[] {
  try {
    return plannedExposures(line ?? '');
  } catch (error) {
    if (error instanceof InputError) return [];
    throw error;
  }
}

/** The largest exposure at which each patch has a reading. */
function farthestOfPatches(rows: readonly BenchRow[], conditions: RunningReadings['conditions']): Map<string, number> {
  const farthest = new Map<string, number>();
  for (const { values } of rows) {
    const exposure = exposureOfRow(values, conditions);
    if (typeof exposure !== 'number' || !['density', 'L', 'a', 'b'].some((key) => numberIn(values, key) !== undefined)) continue;
    const patch = patchName(values);
    farthest.set(patch, Math.max(farthest.get(patch) ?? 0, exposure));
  }
  return farthest;
}

function patchName(values: BenchRow['values']): string {
  const reference = numberIn(values, 'blueWool');
  const names = [reference === undefined ? textIn(values, 'colour') : `blue wool ${reference}`, textIn(values, 'series')];
  return names.filter((name) => name !== undefined).join(', ') || 'the patch';
}
