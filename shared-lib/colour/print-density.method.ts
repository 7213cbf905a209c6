import { InputError } from '../calculation/input-error.ts';
import type { BenchReadings, Method } from '../method/method.ts';
import { runOnBench } from '../method/run-on-bench.ts';
import { numberIn, textIn } from '../method/sheet.ts';
import { densityChannels } from './density-channels.ts';
import { backingField, densityBasisField, densityStatusField, instrumentField } from './density-conditions.ts';
import { densityCalculation } from './density.calculation.ts';

const titles = { cyan: 'Cyan', magenta: 'Magenta', yellow: 'Yellow', visual: 'Black or visual' } as const;

/** Reflection densities of solids along a print. */
export const printDensityMethod: Method = {
  id: 'print-density',
  version: '1',
  title: 'Density of solids along the print',
  shortTitle: 'Density',
  group: 'colour',
  standards: ['ISO 5-3', 'ISO 5-4', 'ISO 13655'],
  help: {
    shows: 'How much of each process ink lies on the film and how evenly, from the light that it takes away. It compares prints of one ink; it says nothing of the hue.',
    how: [
      'Calibrate the instrument on its white. Choose status and basis as the customer does.',
      'Lay the film on the agreed backing without a fold or air; transparent film over white.',
      'Read the same solid at several places across and along: one row per place, each ink in its column.',
      'Minus film: set the zero on the unprinted film over the same backing first.',
    ],
    spoils: [
      'Wet ink: it dries back and loses density. A polarising filter hides part of this; never mix readings with and without.',
      'Another backing, status or basis than the number it is compared with.',
      'Metallic and special colours: use colour measurement instead.',
      'A dirty window or a white tile past its date.',
    ],
  },
  cautions: [],
  conditions: [densityStatusField, densityBasisField, backingField, instrumentField],
  readings: {
    rowName: 'place',
    fields: [
      { kind: 'text', key: 'label', label: 'Place', maxLength: 100 },
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
  const cells = densityChannels.map((channel) => ({
    channel,
    cells: bench.rows.flatMap(({ values }, index) => (numberIn(values, channel) === undefined ? [] : [{ index, value: numberIn(values, channel)! }])),
  }));
  const read = cells.filter((column) => column.cells.length > 0);
  if (read.length === 0) throw new InputError('rows[0].cyan', null, 'No density has been read yet.');
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
