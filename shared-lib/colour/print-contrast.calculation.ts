import { z } from 'zod';
import { defineCalculation } from '../calculation/calculation.ts';
import { InputError } from '../calculation/input-error.ts';
import { replicatesFigure } from '../figure/replicates-figure.ts';
import { levelSchema } from '../statistics/level.ts';
import { meanOfReplicates } from '../statistics/mean-of-replicates.ts';
import { densitySchema } from './density-value.ts';
import { paperNote } from './paper-note.ts';
import { inStep, oneOrMore } from './replicates.ts';

const input = z.strictObject({
  solid: oneOrMore(z.number().gt(0).max(6)),
  tint: oneOrMore(densitySchema),
  /** Nominal value of the tint. */
  patchPct: z.number().gt(0).lt(100).default(75),
  paper: z.number().min(0).max(4).optional(),
  level: levelSchema,
});

export const printContrastCalculation = defineCalculation({
  id: 'print-contrast',
  version: '1',
  title: 'Print contrast',
  input,
  compute: ({ solid, tint, patchPct, paper, level }) => {
    const sets = inStep({ solid, tint });
    const values = sets.map((set, index) => {
      const overPaper = set.solid - (paper ?? 0);
      if (!(overPaper > 0)) throw new InputError(Array.isArray(solid) ? `solid[${index}]` : 'solid', set.solid, `The solid (${set.solid}) must be denser than the paper (${paper}).`);
      if (set.tint > set.solid) throw new InputError(Array.isArray(tint) ? `tint[${index}]` : 'tint', set.tint, `The solid (${set.solid}) is lighter than the tint (${set.tint}); check that they are not exchanged.`);
      return (100 * (set.solid - set.tint)) / overPaper;
    });
    const contrastPct = meanOfReplicates(values, '%', level);
    return {
      results: { contrastPct },
      table: sets.map((set, index) => ({ reading: index + 1, ...set, patchPct, contrastPct: values[index]! })),
      notes: [`Contrast of the solid with the ${patchPct} % patch; with another patch it would be another number.`, paperNote(paper)],
      figures: [replicatesFigure('contrast-readings', `Print contrast at the ${patchPct} % patch`, '%', values, contrastPct)],
    };
  },
  columns: [
    { key: 'reading', title: 'Reading' },
    { key: 'solid', title: 'Solid', decimals: 2 },
    { key: 'tint', title: 'Tint', decimals: 2 },
    { key: 'patchPct', title: 'Patch', unit: '%', decimals: 0 },
    { key: 'contrastPct', title: 'Print contrast', unit: '%', decimals: 1 },
  ],
  cautions: [],
  sources: ['Print contrast (Ds − Dt)/Ds: ISO 12647-1 terms, from memory; the 75 % patch is common practice'],
});
