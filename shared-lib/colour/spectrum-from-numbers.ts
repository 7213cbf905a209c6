import { InputError } from '../calculation/input-error.ts';
import { highestFraction, zeroError } from './reflectance-scale.ts';
import { gridOf, mostBands, type SpectralGrid } from './spectral-grid.ts';
import type { Spectrum } from './spectrum.ts';

/** What is said of a row of numbers beside the numbers. */
export interface SpectrumFrame {
  /** Of each number; `null` where only a frame or nothing is known. */
  wavelengthsNm: number[] | null;
  fromNm?: number;
  toNm?: number;
  stepNm?: number;
  scale?: 'percent' | 'fraction';
}

/**
 * Numbers with what is said of them as a spectrum. Wavelengths that run downwards are turned round with their readings.
 * @param field what a refusal is put down to; `FIELD.wavelengths` and `FIELD.scale` where that must be asked
 * @throws InputError for bands that are missing or too many, wavelengths that are unequal or do not reach from 400 to 700 nm, a
 *   scale that cannot be told, and reflectance below −1 % or above 200 %.
 */
export function spectrumFromNumbers(values: readonly number[], frame: SpectrumFrame, field: string): Spectrum {
  const descending = frame.wavelengthsNm !== null && frame.wavelengthsNm[0]! > frame.wavelengthsNm.at(-1)!;
  const ordered = descending ? [...values].reverse() : [...values];
  const grid = frame.wavelengthsNm === null ? gridOfFrame(values.length, frame, field) : gridAt(descending ? [...frame.wavelengthsNm].reverse() : frame.wavelengthsNm, field);
  if (grid.count !== values.length) throw wrongCount(values.length, grid, field);
  const scale = frame.scale ?? scaleOf(ordered, field);
  ordered.forEach((value, index) => {
    const fraction = scale === 'percent' ? value / 100 : value;
    if (fraction < -zeroError || fraction > highestFraction) {
      throw new InputError(field, value, `Reflectance must lie between 0 and 100 %, with fluorescence up to ${100 * highestFraction} %; at ${grid.startNm + index * grid.stepNm} nm it is ${plain(100 * fraction)} %. Check the reading, and whether it is in percent.`);
    }
  });
  return { ...grid, scale, values: ordered };
}

/** How many readings a frame stands for most often, by their number: what a question may offer. */
export function likelyFrame(count: number): { fromNm: number; toNm: number } | null {
  return { 31: { fromNm: 400, toNm: 700 }, 16: { fromNm: 400, toNm: 700 }, 36: { fromNm: 380, toNm: 730 }, 41: { fromNm: 380, toNm: 780 }, 40: { fromNm: 360, toNm: 750 }, 39: { fromNm: 360, toNm: 740 }, 43: { fromNm: 360, toNm: 780 } }[count] ?? null;
}

function gridOfFrame(count: number, { fromNm, toNm, stepNm }: SpectrumFrame, field: string): SpectralGrid {
  if (fromNm === undefined || (toNm === undefined && stepNm === undefined)) {
    const likely = likelyFrame(count);
    const example = likely ? `${likely.fromNm}-${likely.toNm}` : '400-700';
    throw new InputError(`${field}.wavelengths`, count, `${count} ${count === 1 ? 'number' : 'numbers'} without wavelengths: write where they begin and end in front of them, such as “${example}: …”.`);
  }
  if (toNm !== undefined && toNm <= fromNm) throw new InputError(`${field}.wavelengths`, toNm, `The wavelengths must rise: write “${toNm}-${fromNm}: …”, and the readings in that order.`);
  if (stepNm === 0) throw new InputError(`${field}.wavelengths`, 0, 'The step of the wavelengths must be more than 0 nm.');
  const end = toNm ?? fromNm + (count - 1) * stepNm!;
  const step = stepNm ?? (end - fromNm) / (count - 1);
  const bands = Math.round((end - fromNm) / step) + 1;
  if (stepNm === undefined && !isUsualStep(step)) {
    const likely = [20, 10, 5].find((usual) => Math.abs((end - fromNm) / usual + 1 - count) < 0.1 * count) ?? 10;
    throw new InputError(`${field}.wavelengths`, count, `${count} readings do not divide ${fromNm}–${end} nm into equal steps; by ${likely} nm there are ${(end - fromNm) / likely + 1}. Some are missing or there are too many.`);
  }
  if (bands > mostBands) throw new InputError(`${field}.wavelengths`, bands, `${fromNm}–${end} nm by ${step} nm are ${bands} wavelengths; a spectrum has at most ${mostBands}.`);
  const grid = gridAt(Array.from({ length: bands }, (_, index) => fromNm + index * step), field);
  if (bands !== count) throw wrongCount(count, grid, field);
  return grid;
}

function isUsualStep(step: number): boolean {
  return step === 20 || step === 10 || (step > 0 && step <= 5 && Number.isInteger(step));
}

/** As `gridOf`, with the refusal in words of a spectrum. */
function gridAt(wavelengthsNm: readonly number[], field: string): SpectralGrid {
  try {
    return gridOf(wavelengthsNm, 'The wavelengths');
  } catch (error) {
    if (error instanceof InputError) throw new InputError(`${field}.wavelengths`, error.value, error.message.replace(/\[\d+\]/, ''));
    throw error;
  }
}

function wrongCount(count: number, { startNm, stepNm, count: bands }: SpectralGrid, field: string): InputError {
  const difference = Math.abs(count - bands);
  const fault = count < bands ? `${difference === 1 ? 'one is' : `${difference} are`} missing` : `there ${difference === 1 ? 'is one' : `are ${difference}`} too many`;
  return new InputError(field, count, `${count} readings for the ${bands} wavelengths ${startNm}–${startNm + (bands - 1) * stepNm} nm by ${stepNm}: ${fault}.`);
}

function scaleOf(values: readonly number[], field: string): 'percent' | 'fraction' {
  const highest = Math.max(...values);
  if (highest > 1 && highest <= highestFraction) {
    throw new InputError(`${field}.scale`, highest, `The highest reading is ${highest}: ${highest} % of a black, or ${plain(100 * highest)} % of a print that fluoresces? Write % or 0-1 in front, such as “%: …”.`);
  }
  return highest > highestFraction ? 'percent' : 'fraction';
}

function plain(value: number): string {
  return String(Number(value.toFixed(1)));
}
