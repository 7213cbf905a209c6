import { InputError } from '../calculation/input-error.ts';
import { instrumentField } from '../method/instrument-field.ts';
import type { BenchReadings, Method } from '../method/method.ts';
import { runOnBench } from '../method/run-on-bench.ts';
import { numberIn, textIn } from '../method/sheet.ts';
import { benchSpectra, type BenchSpectra } from './bench-spectra.ts';
import { densityChannels } from './density-channels.ts';
import { backingField, densityBasisField, densityStatusField } from './density-conditions.ts';
import { densityCalculation } from './density.calculation.ts';

const titles = { cyan: 'Cyan', magenta: 'Magenta', yellow: 'Yellow', visual: 'Black or visual' } as const;

/** Reflection densities of solids along a print. */
export const printDensityMethod: Method = {
  id: 'print-density',
  version: '2',
  title: 'Density of solids along the print',
  shortTitle: 'Density',
  group: 'colour',
  standards: ['ISO 5-3', 'ISO 5-4', 'ISO 13655'],
  help: {
    shows: 'How much of each process ink lies on the film and how evenly, from the light that it takes away. It compares prints of one ink; it says nothing of the hue.',
    how: [
      'Calibrate the instrument on its white. Choose status and basis as the customer does.',
      'Lay the film on the agreed backing without a fold or air; transparent film over white.',
      'Read the same solid at several places across and along: one row per place, each ink in its column, or the spectrum, from which all follow.',
      'Minus film: set the zero on the unprinted film over the same backing first; for spectra, read the spectrum of the unprinted film.',
    ],
    spoils: [
      'Wet ink: it dries back and loses density. A polarising filter hides part of this; never mix readings with and without.',
      'Another backing, status or basis than the number it is compared with.',
      'Metallic and special colours: use colour measurement instead.',
      'A dirty window or a white tile past its date.',
    ],
  },
  cautions: [],
  conditions: [
    densityStatusField,
    densityBasisField,
    { kind: 'spectrum', key: 'paperSpectrum', label: 'Spectrum of the unprinted film', hint: 'for densities from spectra minus film; over the same backing' },
    backingField,
    instrumentField,
  ],
  readings: {
    rowName: 'place',
    fields: [
      { kind: 'text', key: 'label', label: 'Place', maxLength: 100 },
      { kind: 'spectrum', key: 'spectrum', label: 'Spectrum', nameTo: 'label' },
      ...densityChannels.map((key) => ({ kind: 'number' as const, key, label: titles[key], min: -0.05, max: 6, usual: { min: 0.05, max: 2.5 } })),
    ],
    startRows: 5,
    minRows: 1,
    maxRows: 1000,
  },
  calculation: 'density',
  properties: densityChannels.map((key) => ({
    key,
    title: `${titles[key]} density`,
    unit: '',
    better: 'within' as const,
    limited: true,
    headline: true,
    readingsFigure: `${key}-density`,
  })),
  evaluate,
};

function evaluate(bench: BenchReadings) {
  const spectra = benchSpectra(bench, ['paperSpectrum'], densityChannels);
  return spectra ? fromSpectra(bench, spectra) : fromTyped(bench);
}

function fromSpectra(bench: BenchReadings, { wavelengthsNm, curves, rows, ofConditions }: BenchSpectra) {
  const paper = ofConditions.paperSpectrum;
  const minus = textIn(bench.conditions, 'densityBasis') === 'minus-paper';
  if (minus && !paper) throw new InputError('conditions.paperSpectrum', null, 'Densities minus film from spectra need the spectrum of the unprinted film; or say that they are absolute.');
  if (!minus && paper) throw new InputError('conditions.densityBasis', 'absolute', 'The spectrum of the unprinted film is there to be subtracted: say that the densities are minus film, or clear it.');
  const input = { wavelengthsNm, reflectance: curves, scale: 'fraction', status: textIn(bench.conditions, 'status'), paper };
  return runOnBench(densityCalculation, input, (field) => {
    const [, what, place] = /^(reflectance|paper)(?:\[(\d+)\])?/.exec(field) ?? [];
    if (what === 'reflectance') return `rows[${rows[Number(place ?? 0)]}].spectrum`;
    return what === 'paper' ? 'conditions.paperSpectrum' : `conditions.${field}`;
  });
}

function fromTyped(bench: BenchReadings) {
  const cells = densityChannels.map((channel) => ({
    channel,
    cells: bench.rows.flatMap(({ values }, index) => (numberIn(values, channel) === undefined ? [] : [{ index, value: numberIn(values, channel)! }])),
  }));
  const read = cells.filter((column) => column.cells.length > 0);
  if (read.length === 0) throw new InputError('rows[0].cyan', null, 'No density has been read yet, nor a spectrum.');
  const input = {
    read: Object.fromEntries(read.map((column) => [column.channel, column.cells.map(({ value }) => value)])),
    status: textIn(bench.conditions, 'status'),
    basis: textIn(bench.conditions, 'densityBasis'),
  };
  return runOnBench(densityCalculation, input, (field) => {
    const [, channel, place] = /^read\.(\w+)(?:\[(\d+)\])?/.exec(field) ?? [];
    const column = read.find((candidate) => candidate.channel === channel);
    if (column) return `rows[${column.cells[Number(place ?? 0)]!.index}].${channel}`;
    return `conditions.${field === 'basis' ? 'densityBasis' : field}`;
  });
}
