import { z } from 'zod';
import { defineCalculation, type Outcome } from '../calculation/calculation.ts';
import { InputError } from '../calculation/input-error.ts';
import type { Flag, ResultValue } from '../calculation/result.ts';
import { valueWithoutInterval } from '../calculation/value-without-interval.ts';
import { replicatesFigure } from '../figure/replicates-figure.ts';
import { levelSchema } from '../statistics/level.ts';
import { meanOfReplicates } from '../statistics/mean-of-replicates.ts';
import { densityChannels, productOf, type DensityChannel } from './density-channels.ts';
import { basisUnit, densityBases, densitySchema, type DensityBasis } from './density-value.ts';
import { readReflectance, scaleSchema, spectrumSchema } from './reflectance-scale.ts';
import { listOf, oneOrMore } from './replicates.ts';
import { holdToBands } from './spectra-input.ts';
import { spectralDensity } from './spectral-density.ts';
import { gridOf, wavelengthsSchema } from './spectral-grid.ts';
import { densityStatuses } from './spectral-products.ts';
import { spectralRangeFlags } from './spectral-range-flags.ts';

const read = oneOrMore(densitySchema).optional();
const channelReadings = z.strictObject({ cyan: read, magenta: read, yellow: read, visual: read });

const input = z.strictObject({
  /** From a spectrum, or replicate spectra … */
  wavelengthsNm: wavelengthsSchema.optional(),
  reflectance: oneOrMore(spectrumSchema).optional(),
  scale: scaleSchema,
  /** … or read from the instrument. */
  read: channelReadings.optional(),
  status: z.enum(densityStatuses),
  /** Of the unprinted paper or film: its spectrum, or its densities as read; it is subtracted. */
  paper: z.union([spectrumSchema, channelReadings]).optional(),
  /** Of densities as read; with `paper` they are absolute and become minus paper. */
  basis: z.enum(densityBases).optional(),
  level: levelSchema,
});

type Given = z.output<typeof input>;
type Readings = Partial<Record<DensityChannel, number[]>>;

export const densityCalculation = defineCalculation({
  id: 'density',
  version: '1',
  title: 'Reflection density',
  input,
  compute,
  columns: [
    { key: 'reading', title: 'Reading' },
    { key: 'cyan', title: 'Cyan', decimals: 3 },
    { key: 'magenta', title: 'Magenta', decimals: 3 },
    { key: 'yellow', title: 'Yellow', decimals: 3 },
    { key: 'visual', title: 'Visual', decimals: 3 },
    { key: 'status', title: 'Status' },
    { key: 'basis', title: 'Basis' },
  ],
  cautions: [],
  sources: ['ISO 5-3 (spectral products)', 'ISO 5-4 (geometry of reflection density, from memory)'],
});

function compute(given: Given): Outcome {
  if ((given.read === undefined) === (given.reflectance === undefined)) {
    throw new InputError('read', null, 'Density needs either a spectrum (wavelengthsNm, reflectance) or densities as read (read).');
  }
  const flags: Flag[] = [];
  const notes: string[] = [];
  const { readings, basis } = given.read ? asRead(given, notes) : fromSpectra(given, flags, notes);
  const results: Record<string, ResultValue> = {};
  const unit = basisUnit[basis];
  for (const channel of densityChannels) {
    const values = readings[channel];
    results[channel] = values ? meanOfReplicates(values, unit, given.level) : valueWithoutInterval(null, unit, 0);
    if (values?.some((value) => value < 0)) {
      flags.push({ code: 'negative-density', where: channel, text: `A ${channel} density is below zero: lighter than ${basis === 'minus-paper' ? 'the paper' : 'a perfect white'}. Check the calibration and the paper's reading.` });
    }
  }
  const rows = Math.max(...densityChannels.map((channel) => readings[channel]?.length ?? 0));
  const read = densityChannels.filter((channel) => readings[channel]);
  return {
    results,
    table: Array.from({ length: rows }, (_, index) => ({
      reading: index + 1,
      ...Object.fromEntries(densityChannels.map((channel) => [channel, readings[channel]?.[index] ?? null])),
      status: given.status,
      basis,
    })),
    flags,
    notes: [...notes, `Status ${given.status} densities, ${unit}.`, ...(rows === 1 ? ['Single readings give no interval.'] : [])],
    figures: read.map((channel) => replicatesFigure(`${channel}-density`, `${channel[0]!.toUpperCase()}${channel.slice(1)} density, ${unit}`, '', readings[channel]!, results[channel]!)),
  };
}

function asRead({ read, paper, basis, status }: Given, notes: string[]): { readings: Readings; basis: DensityBasis } {
  if (Array.isArray(paper)) throw new InputError('paper', paper.length, 'For densities as read, give the densities of the paper, not its spectrum.');
  if (basis === undefined && paper === undefined) throw new InputError('basis', null, "State whether these densities are 'absolute' or 'minus-paper'.");
  if (basis === 'minus-paper' && paper !== undefined) throw new InputError('paper', null, 'Densities read minus paper take no paper density; it would be subtracted twice.');
  const readings: Readings = {};
  for (const channel of densityChannels) {
    const values = read![channel];
    if (values === undefined) continue;
    if (status === 'visual' && channel !== 'visual') throw new InputError(`read.${channel}`, null, 'Status visual has only the visual density.');
    const list = [...listOf(values)];
    const negative = basis === 'minus-paper' ? -1 : list.findIndex((value) => value < 0);
    if (negative >= 0) throw new InputError(`read.${channel}[${negative}]`, list[negative], `An absolute density cannot be below zero, as ${list[negative]} is; state the basis 'minus-paper' if the paper was subtracted.`);
    readings[channel] = paper === undefined ? list : list.map((value) => value - paperDensity(paper, channel));
  }
  if (Object.keys(readings).length === 0) throw new InputError('read', null, 'No density was read: give cyan, magenta, yellow or visual.');
  if (paper !== undefined) notes.push('The density of the paper was subtracted.');
  return { readings, basis: paper === undefined ? basis! : 'minus-paper' };
}

function paperDensity(paper: z.output<typeof channelReadings>, channel: DensityChannel): number {
  const value = paper[channel];
  if (value === undefined) throw new InputError(`paper.${channel}`, null, `The paper's ${channel} density is missing.`);
  const list = listOf(value);
  return list.reduce((total, one) => total + one, 0) / list.length;
}

function fromSpectra({ wavelengthsNm, reflectance, scale, paper, basis, status }: Given, flags: Flag[], notes: string[]): { readings: Readings; basis: DensityBasis } {
  if (wavelengthsNm === undefined) throw new InputError('wavelengthsNm', null, 'A spectrum needs its wavelengths in wavelengthsNm.');
  if (basis !== undefined) throw new InputError('basis', basis, 'A density from a spectrum is absolute, or minus paper when the spectrum of the paper is given; basis is for densities as read.');
  if (paper !== undefined && !Array.isArray(paper)) throw new InputError('paper', null, 'For a density from a spectrum, give the spectrum of the paper.');
  const grid = gridOf(wavelengthsNm);
  const spectra = Array.isArray(reflectance![0]) ? (reflectance as number[][]) : [reflectance as number[]];
  holdToBands(spectra, grid.count, 'reflectance');
  if (paper) holdToBands([paper], grid.count, 'paper');
  const all = readReflectance(paper ? [...spectra, paper] : spectra, scale, 'reflectance');
  flags.push(...all.flags, ...spectralRangeFlags(grid));
  notes.push(...all.notes);
  const readings: Readings = {};
  for (const channel of densityChannels) {
    const product = productOf(channel, status);
    if (product === null) continue;
    const densities = all.fractions.map((spectrum, index) => {
      const density = spectralDensity(spectrum, grid, product);
      if (density === null) throw new InputError(index < spectra.length ? 'reflectance' : 'paper', 0, `Nothing is reflected through the filter of ${channel}; its density would have no end.`);
      return density;
    });
    const ofPaper = paper ? densities.pop()! : 0;
    readings[channel] = densities.map((density) => density - ofPaper);
  }
  if (paper) notes.push('The density of the paper was subtracted.');
  return { readings, basis: paper ? 'minus-paper' : 'absolute' };
}
