import { InputError } from '../calculation/input-error.ts';
import type { BenchReadings } from '../method/method.ts';
import { numberIn, textIn } from '../method/sheet.ts';
import { onCommonGrid } from './common-grid.ts';
import { wavelengthsOf } from './spectral-grid.ts';
import { spectrumOf } from './spectrum-text.ts';
import { fractionsOf } from './spectrum.ts';

/** The spectra of a bench sheet as fractions on the wavelengths common to them. */
export interface BenchSpectra {
  wavelengthsNm: number[];
  /** One for each row that has one. */
  curves: number[][];
  labels: string[];
  /** The index of each row on the sheet. */
  rows: number[];
  /** Of conditions, by key; those without a spectrum are absent. */
  ofConditions: Record<string, number[]>;
}

/**
 * Spectra of the rows, in the column `spectrum`, with those of conditions; `null` where no row has one.
 * @param typed keys of the columns in which a row without a spectrum would have numbers
 * @throws InputError for a sheet on which some rows are typed and others are spectra
 */
export function benchSpectra(bench: BenchReadings, conditionKeys: readonly string[], typed: readonly string[]): BenchSpectra | null {
  const read = bench.rows.flatMap(({ values }, index) => {
    const spectrum = textIn(values, 'spectrum');
    return spectrum === undefined ? [] : [{ index, label: textIn(values, 'label') ?? `${index + 1}`, spectrum: spectrumOf(spectrum) }];
  });
  if (read.length === 0) return null;
  bench.rows.forEach(({ values }, index) => {
    const key = typed.find((candidate) => numberIn(values, candidate) !== undefined);
    if (key !== undefined) throw new InputError(`rows[${index}].${key}`, numberIn(values, key), 'Other rows of this sheet are spectra; give all rows as spectra or none.');
  });
  const conditions = conditionKeys.flatMap((key) => {
    const text = textIn(bench.conditions, key);
    return text === undefined ? [] : [{ key, spectrum: spectrumOf(text) }];
  });
  const all = [...conditions, ...read].map(({ spectrum }) => ({ grid: { startNm: spectrum.startNm, stepNm: spectrum.stepNm, count: spectrum.count }, values: fractionsOf(spectrum) }));
  const common = onCommonGrid(all);
  return {
    wavelengthsNm: wavelengthsOf(common.grid),
    curves: common.curves.slice(conditions.length),
    labels: read.map(({ label }) => label),
    rows: read.map(({ index }) => index),
    ofConditions: Object.fromEntries(conditions.map(({ key }, place) => [key, common.curves[place]!])),
  };
}
