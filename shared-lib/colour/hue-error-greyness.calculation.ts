import { z } from 'zod';
import { defineCalculation } from '../calculation/calculation.ts';
import { InputError } from '../calculation/input-error.ts';
import { valueWithoutInterval } from '../calculation/value-without-interval.ts';
import { replicatesFigure } from '../figure/replicates-figure.ts';
import { levelSchema } from '../statistics/level.ts';
import { meanOfReplicates } from '../statistics/mean-of-replicates.ts';
import { densitySchema } from './density-value.ts';
import { hueErrorGreyness } from './hue-error.ts';
import { inStep, oneOrMore } from './replicates.ts';

const paperDensity = z.number().min(0).max(4);
const channel = oneOrMore(densitySchema);

const input = z.strictObject({
  /** Densities of one solid through the three filters. */
  red: channel,
  green: channel,
  blue: channel,
  paper: z.strictObject({ red: paperDensity, green: paperDensity, blue: paperDensity }).optional(),
  level: levelSchema,
});

export const hueErrorGreynessCalculation = defineCalculation({
  id: 'hue-error-greyness',
  version: '1',
  title: 'Hue error and greyness of an ink',
  input,
  compute: ({ red, green, blue, paper, level }) => {
    const sets = inStep({ red, green, blue });
    const rows = sets.map((set, index) => {
      const over = { red: set.red - (paper?.red ?? 0), green: set.green - (paper?.green ?? 0), blue: set.blue - (paper?.blue ?? 0) };
      if (!(Math.max(over.red, over.green, over.blue) > 0)) throw new InputError('red', set.red, 'None of the three densities lies above the paper; there is no ink to judge.');
      const { hueError, greyness, efficiency } = hueErrorGreyness(over.red, over.green, over.blue);
      return { reading: index + 1, ...set, hueErrorPct: hueError === null ? null : 100 * hueError, greynessPct: 100 * greyness, efficiencyPct: 100 * efficiency };
    });
    const hueErrors = rows.flatMap(({ hueErrorPct }) => (hueErrorPct === null ? [] : [hueErrorPct]));
    const hueErrorPct = hueErrors.length === 0 ? valueWithoutInterval(null, '%', 0) : meanOfReplicates(hueErrors, '%', level);
    const greynessPct = meanOfReplicates(rows.map((row) => row.greynessPct), '%', level);
    return {
      results: { hueErrorPct, greynessPct, efficiencyPct: meanOfReplicates(rows.map((row) => row.efficiencyPct), '%', level) },
      table: rows,
      flags: rows
        .filter((row) => row.greynessPct < 0)
        .map(({ reading }) => ({ code: 'below-paper', where: `reading ${reading}`, text: `At reading ${reading} one density lies below the paper, which makes the greyness negative; check the paper's reading.` })),
      notes: [
        ...(hueErrors.length < rows.length ? ['Where all three densities are equal the ink is a grey, which has no hue error.'] : []),
        paper ? 'Absolute densities; those of the paper were subtracted.' : 'The densities were taken as minus paper; for absolute ones give those of the paper.',
      ],
      figures: [
        ...(hueErrors.length > 0 ? [replicatesFigure('hue-error-readings', 'Hue error', '%', hueErrors, hueErrorPct)] : []),
        replicatesFigure('greyness-readings', 'Greyness', '%', rows.map((row) => row.greynessPct), greynessPct),
      ],
    };
  },
  columns: [
    { key: 'reading', title: 'Reading' },
    { key: 'red', title: 'Red filter', decimals: 2 },
    { key: 'green', title: 'Green filter', decimals: 2 },
    { key: 'blue', title: 'Blue filter', decimals: 2 },
    { key: 'hueErrorPct', title: 'Hue error', unit: '%', decimals: 1 },
    { key: 'greynessPct', title: 'Greyness', unit: '%', decimals: 1 },
    { key: 'efficiencyPct', title: 'Efficiency', unit: '%', decimals: 1 },
  ],
  cautions: [],
  sources: ['Hue error (M − L)/(H − L), greyness L/H, efficiency 1 − (L + M)/2H after Preucil, from memory'],
});
