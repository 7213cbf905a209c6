import { z } from 'zod';
import { defineCalculation } from '../calculation/calculation.ts';
import { InputError } from '../calculation/input-error.ts';
import type { Flag } from '../calculation/result.ts';
import { replicatesFigure } from '../figure/replicates-figure.ts';
import { levelSchema } from '../statistics/level.ts';
import { meanOfReplicates } from '../statistics/mean-of-replicates.ts';
import { paperNote } from './paper-note.ts';
import { inStep, oneOrMore } from './replicates.ts';
import { trapBrunner, trapPreucil, trapRitz } from './trap.ts';

const ink = z.number().gt(0).max(6);

const input = z.strictObject({
  /** Densities through the filter of the second ink. */
  first: oneOrMore(z.number().min(0).max(6)),
  second: oneOrMore(ink),
  overprint: oneOrMore(ink),
  paper: z.number().min(0).max(4).optional(),
  level: levelSchema,
});

export const trapCalculation = defineCalculation({
  id: 'trap',
  version: '1',
  title: 'Ink trap',
  input,
  compute: ({ first, second, overprint, paper, level }) => {
    const sets = inStep({ first, second, overprint });
    const rows = sets.map((set, index) => {
      const densities = { first: set.first - (paper ?? 0), second: set.second - (paper ?? 0), overprint: set.overprint - (paper ?? 0) };
      if (!(densities.second > 0)) throw new InputError('second', set.second, `The second ink (${set.second}) must be denser than the paper (${paper}).`);
      if (densities.first < 0) throw new InputError('first', set.first, `The first ink (${set.first}) is lighter than the paper (${paper}); check the paper's density and the filter.`);
      if (densities.overprint < densities.first) {
        throw new InputError('overprint', set.overprint, `The overprint (${set.overprint}) is lighter than the first ink alone (${set.first}); check the order and that all three were read through the second ink's filter.`);
      }
      return { reading: index + 1, ...set, apparentPct: 100 * trapPreucil(densities), brunnerPct: 100 * trapBrunner(densities), ritzPct: 100 * trapRitz(densities) };
    });
    const mean = (key: 'apparentPct' | 'brunnerPct' | 'ritzPct') => meanOfReplicates(rows.map((row) => row[key]), '%', level);
    const apparentPct = mean('apparentPct');
    return {
      results: { apparentPct, brunnerPct: mean('brunnerPct'), ritzPct: mean('ritzPct') },
      table: rows,
      flags: rows.filter((row) => row.apparentPct > 100).map((row) => above(row.reading)),
      notes: ['Apparent trap is that of Preucil; the formulas differ and must not be compared with one another.', paperNote(paper)],
      figures: [replicatesFigure('trap-readings', 'Apparent trap', '%', rows.map((row) => row.apparentPct), apparentPct)],
    };
  },
  columns: [
    { key: 'reading', title: 'Reading' },
    { key: 'first', title: 'First ink', decimals: 2 },
    { key: 'second', title: 'Second ink', decimals: 2 },
    { key: 'overprint', title: 'Overprint', decimals: 2 },
    { key: 'apparentPct', title: 'Preucil', unit: '%', decimals: 1 },
    { key: 'brunnerPct', title: 'Brunner', unit: '%', decimals: 1 },
    { key: 'ritzPct', title: 'Ritz', unit: '%', decimals: 1 },
  ],
  cautions: [],
  sources: ['Preucil: Chung & Hsu, A Study of Ink Trapping', 'Brunner and Ritz: from memory'],
});

function above(reading: number): Flag {
  return { code: 'trap-above-100', where: `reading ${reading}`, text: `At reading ${reading} the overprint is denser than both inks together; check the filter and the order of the inks.` };
}
