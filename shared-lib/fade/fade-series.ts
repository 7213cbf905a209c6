import { InputError } from '../calculation/input-error.ts';

/** The readings of one patch in the order of exposure. */
export interface FadeSeries {
  name: string;
  exposures: number[];
  /** Retained fraction or ΔE. */
  values: number[];
}

export interface FadeReading {
  exposure: number;
  series?: string | undefined;
}

/** A curve with one parameter and its scatter need two readings after the start. */
export const leastExposed = 2;

/**
 * Sorts readings into their series, in the order in which the series first appear.
 * @param values retained fraction or ΔE of each reading.
 * @throws InputError when the exposure falls within a series.
 */
export function fadeSeries(readings: readonly FadeReading[], values: readonly number[]): FadeSeries[] {
  const byName = new Map<string, FadeSeries>();
  readings.forEach(({ exposure, series: name = '' }, index) => {
    const series = byName.get(name) ?? { name, exposures: [], values: [] };
    byName.set(name, series);
    const before = series.exposures.at(-1);
    if (before !== undefined && exposure < before) {
      throw new InputError(`readings[${index}].exposure`, exposure, `The exposure of a patch only grows; ${exposure} comes after ${before}${inSeries(name)}.`);
    }
    series.exposures.push(exposure);
    series.values.push(values[index]!);
  });
  return [...byName.values()];
}

/** How many readings of a series were taken after exposure 0. */
function exposedCount({ exposures }: FadeSeries): number {
  return exposures.filter((exposure) => exposure > 0).length;
}

/** @throws InputError when a series has too few readings after exposure 0 for a curve and its scatter. */
export function needEnoughExposed(series: readonly FadeSeries[]): void {
  const short = series.find((one) => exposedCount(one) < leastExposed);
  if (!short) return;
  const count = exposedCount(short);
  throw new InputError('readings', count, `A fade curve needs at least ${leastExposed} readings after exposure 0${inSeries(short.name)}, not ${count}.`);
}

function inSeries(name: string): string {
  return name === '' ? '' : ` in series ${name}`;
}
